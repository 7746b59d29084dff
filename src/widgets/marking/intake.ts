import { LARGEST_FILE, MOST_FILES, type Pile } from '../../exercises/pile.ts';

/** Files that are read in one piece. */
const TOGETHER = 30;

/** Reads files that were chosen or dropped; what cannot be read is refused with its reason. */
export const readFiles = async (
  files: readonly File[],
  pile: Pile,
  heard: (done: number) => void,
): Promise<readonly { readonly name: string; readonly text: string }[]> => {
  const taken = files.slice(0, MOST_FILES);
  if (taken.length < files.length)
    pile.refuse(
      `${files.length - taken.length} more files`,
      `The desk takes ${MOST_FILES} files at a time.`,
    );
  const texts: { name: string; text: string }[] = [];
  const small = taken.filter((file) => {
    if (file.size <= LARGEST_FILE) return true;
    pile.refuse(file.name, 'It is larger than any file of ours, and was not read.');
    return false;
  });
  for (let from = 0; from < small.length; from += TOGETHER) {
    const some = small.slice(from, from + TOGETHER);
    for (const [at, text] of (await textsOf(some)).entries()) {
      const { name = '' } = some[at] ?? {};
      if (text !== undefined) texts.push({ name, text });
      else pile.refuse(name, 'It could not be read. Of a folder, choose the files in it.');
    }
    heard(from + TOGETHER);
  }
  return texts;
};

/** The texts of some files, read in one piece, since asking for each costs more than reading it; undefined where one cannot be read. */
const textsOf = async (files: readonly File[]): Promise<readonly (string | undefined)[]> => {
  try {
    const bytes = await new Blob([...files]).arrayBuffer();
    let at = 0;
    return files.map(({ size }) => new TextDecoder().decode(bytes.slice(at, (at += size))));
  } catch {
    // One of them cannot be read, and only one by one it is seen which.
    return Promise.all(files.map((file) => file.text().catch(() => undefined)));
  }
};

/** Files dropped anywhere on the page are taken: a browser would otherwise leave the desk to open them. */
export const whenDropped = (mark: Element, take: (files: readonly File[]) => void): void => {
  for (const kind of ['dragover', 'dragleave', 'drop'] as const)
    document.addEventListener(kind, (event) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      mark.toggleAttribute('data-over', kind === 'dragover');
      if (kind === 'drop') take([...event.dataTransfer.files]);
    });
};
