import { LARGEST_FILE, MOST_FILES, type Pile } from '../../exercises/pile.ts';

/** Files that are read side by side. */
const TOGETHER = 24;

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
  for (let from = 0; from < taken.length; from += TOGETHER) {
    await Promise.all(
      taken.slice(from, from + TOGETHER).map(async (file) => {
        if (file.size > LARGEST_FILE) {
          pile.refuse(file.name, 'It is larger than any file of ours, and was not read.');
          return;
        }
        try {
          texts.push({ name: file.name, text: await file.text() });
        } catch {
          pile.refuse(file.name, 'It could not be read. Of a folder, choose the files in it.');
        }
      }),
    );
    heard(from + TOGETHER);
  }
  return texts;
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
