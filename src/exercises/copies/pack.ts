import { strToU8, Zip, ZipDeflate } from 'fflate';

/** Names no folder of Windows can hold, whatever their ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * Names for files after aliases: letters and digits of any script, each name once.
 * @example const name = namer(); name('Blue Heron') // 'blue-heron'
 */
export const namer = (): ((alias: string) => string) => {
  const used = new Set<string>();
  return (alias) => {
    const plain = alias
      .normalize('NFC')
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{M}\p{N}]+/gu, '-')
      .replaceAll(/^-+|-+$/g, '');
    const stem = plain === '' || RESERVED.test(plain) ? `alias-${plain}`.replace(/-$/, '') : plain;
    let name = stem;
    for (let more = 2; used.has(name); more++) name = `${stem}-${more}`;
    used.add(name);
    return name;
  };
};

/** A zip that is filled file by file, so that a page can rest in between. The same texts in the same order give the same bytes. */
export class Pack {
  readonly #parts: Uint8Array[] = [];
  readonly #zip = new Zip((error, part) => {
    if (error) throw error;
    this.#parts.push(part);
  });

  add(path: string, text: string): void {
    const file = new ZipDeflate(path, { level: 6 });
    // Zips hold local times and no zone: a date made from local parts gives the same bytes everywhere.
    file.mtime = new Date(2000, 0, 1);
    this.#zip.add(file);
    file.push(strToU8(text), true);
  }

  /** Ends it; nothing can be added after that. */
  bytes(): Uint8Array<ArrayBuffer> {
    this.#zip.end();
    const whole = new Uint8Array(this.#parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of this.#parts) {
      whole.set(part, at);
      at += part.length;
    }
    return whole;
  }
}
