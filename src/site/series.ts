interface Link {
  readonly address: string;
  readonly title: string;
}

const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/**
 * Links one after another with commas between them, as HTML. A template would put a space before each
 * comma wherever its lines break.
 */
export const series = (links: readonly Link[]): string =>
  links.map(({ address, title }) => `<a href="${escape(address)}">${escape(title)}</a>`).join(', ');
