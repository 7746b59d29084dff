import { LARGEST_FILE, MOST_FILES, type Pile } from '../../exercises/pile.ts';

/** Files that are read in one piece. */
const TOGETHER = 30;

/** Reads files that were chosen or dropped, a handful at a time; what cannot be read is refused with its reason. */
export async function* readFiles(
  files: readonly File[],
  pile: Pile,
): AsyncGenerator<readonly { readonly name: string; readonly text: string }[]> {
  const taken = files.slice(0, MOST_FILES);
  if (taken.length < files.length)
    pile.refuse(
      `${files.length - taken.length} more files`,
      `The desk takes ${MOST_FILES} files at a time.`,
    );
  const small = taken.filter((file) => {
    if (file.size <= LARGEST_FILE) return true;
    pile.refuse(file.name, 'It is larger than any file of ours, and was not read.');
    return false;
  });
  for (let from = 0; from < small.length; from += TOGETHER) {
    const some = small.slice(from, from + TOGETHER);
    const texts = await textsOf(some);
    yield some.flatMap(({ name }, at) => {
      const text = texts[at];
      if (text !== undefined) return { name, text };
      pile.refuse(name, 'It could not be read. Of a folder, choose the files in it.');
      return [];
    });
  }
}

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
