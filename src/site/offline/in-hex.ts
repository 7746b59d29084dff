import Color from 'colorjs.io';

/**
 * A colour of the style sheet as systems outside the page read it, in the light and in the dark.
 *
 * @example inHex(':root { --ink: light-dark(oklch(0% 0 0), white); }', 'ink') // { light: '#000000', dark: '#ffffff' }
 */
export const inHex = (
  css: string,
  name: string,
): { readonly light: string; readonly dark: string } => {
  const [, light, dark] =
    new RegExp(
      `--${name}:\\s*light-dark\\(\\s*([a-z]+(?:\\([^)]*\\))?),\\s*([a-z]+(?:\\([^)]*\\))?)\\s*\\)`,
    ).exec(css) ?? [];
  if (light === undefined || dark === undefined)
    throw new Error(`tokens.css gives --${name} no pair of colours: light-dark(…, …).`);
  const hex = (colour: string): string =>
    new Color(colour).to('srgb').toGamut().toString({ format: 'hex', collapse: false });
  return { light: hex(light), dark: hex(dark) };
};
