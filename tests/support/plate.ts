import type { Locator, Page } from 'playwright-core';

/** One calculator on an open page, as a reader meets it. */
export function plateOn(
  page: Page,
  id: string,
): {
  readonly whole: Locator;
  readonly fields: Locator;
  readonly sliders: Locator;
  readonly result: Locator;
  readonly said: () => Promise<string>;
} {
  const whole = page.locator(`[data-plate="${id}"]`);
  const result = whole.locator('.result').first();
  return {
    whole,
    result,
    fields: whole.locator('input:is([type=text], :not([type]))'),
    sliders: whole.locator('input[type=range]'),
    said: async () => ((await result.textContent()) ?? '').replace(/\s+/g, ' ').trim(),
  };
}

/** The words that a field's own description says about it, errors among them. */
export async function saidAbout(field: Locator): Promise<string> {
  return field.evaluate((input) =>
    `${input.getAttribute('aria-errormessage') ?? ''} ${input.getAttribute('aria-describedby') ?? ''}`
      .split(/\s+/)
      .filter((id) => id !== '')
      .map((id) => document.getElementById(id)?.textContent.trim() ?? '')
      .join(' ')
      .trim(),
  );
}

/** A text without the marks that a country sets between digits: two of them agree if their numbers do. */
export const digitsOf = (text: string): string =>
  text
    .replace(/[\u0660-\u0669]/g, (digit) => String(digit.charCodeAt(0) - 0x660))
    .replace(/\D/g, '');
