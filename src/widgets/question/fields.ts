import { AmbiguousError, InputError } from '../../formula/errors.ts';
import { button, make, setText } from '../parts/dom.ts';

/** A field for one answer: what was typed stays, what is wrong with it stands beside it. */
export interface Field {
  readonly element: HTMLElement;
  /** The text, and whether it is one of ours already: then a single point is the decimal mark. */
  readonly text: () => string;
  readonly stored: () => boolean;
  readonly put: (text: string) => void;
  /**
   * Reads the field; what cannot be read is said beside it, and the answer is undefined.
   * @param insist says so of an empty field, too
   */
  readonly read: <T>(how: (text: string, stored: boolean) => T, insist: boolean) => T | undefined;
  /**
   * What was typed, for keeping work that is not done; of a list what was chosen. Where two readings stand open they still
   * do when it is read again: a single point would then be the decimal mark, so that it is written as a comma.
   */
  readonly typed: () => string;
  readonly focus: () => void;
}

export interface FieldSpec {
  readonly id: string;
  readonly label: string;
  /** What a bare number is taken as. */
  readonly unit: string;
  /** Its label is a sentence, and takes a line of the sheet. */
  readonly wide?: boolean;
  /** Choices in place of a number: what the reader sees, by id. */
  readonly choices?: Readonly<Record<string, string>>;
  readonly changed: () => void;
}

/** Makes a field. Where a text has two readings, a button for each settles which was meant. */
export const makeField = ({ id, label, unit, wide, choices, changed }: FieldSpec): Field => {
  const element = make('div', '', { class: wide ? 'field field-wide' : 'field' }) as HTMLElement;
  const line = make('div', '', { class: 'field-line' });
  const name = make('label', label, { class: 'field-name', for: id });
  // Whoever listens hears the unit, and then what is wrong with the text.
  const said = `${unit === '' ? '' : `${id}-unit `}${id}-note`;
  const input = choices
    ? make('select', '', { class: 'field-value', id, 'aria-describedby': said })
    : make('input', '', {
        class: 'field-value', id, type: 'text', inputmode: 'text', autocomplete: 'off',
        autocapitalize: 'off', spellcheck: 'false', maxlength: '200', 'aria-describedby': said,
      }); // prettier-ignore
  const note = make('p', '', { class: 'field-echo', id: `${id}-note` });
  for (const [value, text] of Object.entries(choices ?? {}))
    input.append(make('option', text, { value }));
  line.append(name, input);
  // Of a number the place is kept, so that fields stand in line.
  if (!choices) line.append(make('span', unit, { class: 'field-unit', id: `${id}-unit` }));
  element.append(line, note);
  const control = input as HTMLInputElement | HTMLSelectElement;

  let stored = choices !== undefined;
  let open = false;
  let touched = false;
  const calm = (): void => {
    note.className = 'field-echo';
    setText(note, '');
    control.removeAttribute('aria-invalid');
    element.removeAttribute('data-wrong');
    open = false;
  };
  const put = (text: string): void => {
    // A list stays as it is where it is told nothing it holds.
    touched = !choices || Object.hasOwn(choices, text);
    if (touched) control.value = text;
    stored = true;
    calm();
  };
  control.addEventListener('input', () => {
    stored = choices !== undefined;
    touched = true;
    calm();
    changed();
  });

  return {
    element,
    text: () => control.value,
    stored: () => stored,
    put,
    focus: () => control.focus(),
    typed: () =>
      choices && !touched
        ? ''
        : open
          ? control.value.trim().replace('.', ',')
          : control.value.trim(),
    read: (how, insist) => {
      calm();
      if (!insist && control.value.trim() === '') return undefined;
      try {
        return how(control.value, stored);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        note.className = 'field-error';
        setText(note, error.message);
        control.setAttribute('aria-invalid', 'true');
        element.toggleAttribute('data-wrong', true);
        open = error instanceof AmbiguousError;
        for (const reading of error instanceof AmbiguousError ? error.readings : []) {
          const meant = button(reading, { 'data-read': reading });
          meant.addEventListener('click', () => {
            put(reading);
            control.focus();
            changed();
          });
          note.append(' ', meant);
        }
        return undefined;
      }
    },
  };
};
