/** Puts texts for {names}; a name nobody knows is the author’s mistake. TeX’s braces never follow a blank or a word’s start here: texts hold none. */
export const fill = (text: string, textOf: (name: string) => string | undefined): string =>
  text.replaceAll(/\{([a-z][a-z0-9-]*)\}/g, (_all, name: string) => {
    const put = textOf(name);
    if (put === undefined) throw new Error(`Nothing is named {${name}} in “${text.slice(0, 60)}”.`);
    return put;
  });
