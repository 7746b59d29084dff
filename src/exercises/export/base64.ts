/** A text’s UTF-8 bytes in base 64. */
export const base64 = (text: string): string =>
  btoa(Array.from(new TextEncoder().encode(text), (byte) => String.fromCharCode(byte)).join(''));
