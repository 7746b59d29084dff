/** Whatever else waits for the page has its turn. */
export const rest = (): Promise<void> => new Promise((done) => setTimeout(done));

/** Goes through many things, some at a time: a phone answers in between. */
export const inTurns = async <T>(
  all: readonly T[],
  atOnce: number,
  use: (one: T, at: number) => void,
): Promise<void> => {
  for (const [at, one] of all.entries()) {
    if (at > 0 && at % atOnce === 0) await rest();
    use(one, at);
  }
};
