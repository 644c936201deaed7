import type { TemplateResult } from 'lit-html';
import type { ProjectSettings } from '../../../server/planning/project-input.ts';
import { type Choice, choiceInput } from '../../fields/choice-input.ts';
import { labelled } from '../../fields/labelled.ts';
import { saveSetting } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { textInput } from '../../fields/text-input.ts';
import { readLengthMm } from '../../format/read-length-mm.ts';
import type { Reading } from '../../format/reading.ts';

type SettingName = keyof ProjectSettings;

/** A setting that is typed. */
export function typedSetting<Value extends string | number | null>(
  { problems }: ScreenBook,
  name: SettingName,
  label: string,
  text: string,
  read: (typed: string) => Reading<Value>,
  more: { readonly help?: string; readonly numeric?: boolean; readonly placeholder?: string } = {},
): TemplateResult {
  const place = { table: 'settings', id: null, field: name } as const;
  return labelled(
    place,
    label,
    textInput<Value>({
      place,
      label,
      text,
      read,
      save: saveSetting(name),
      problems,
      numeric: more.numeric ?? false,
      ...(more.placeholder === undefined ? {} : { placeholder: more.placeholder }),
    }),
    more.help,
  );
}

/** A length setting, shown and read in the project's unit and kept in millimetres. */
export function lengthSetting(
  book: ScreenBook,
  name: 'overhangMm' | 'trimAllowanceMm' | 'kerfMm' | 'sheetTrimMm',
  label: string,
  mostMm: number,
  help: string,
): TemplateResult {
  const { settings, formats } = book;
  return typedSetting<number>(
    book,
    name,
    label,
    formats.length(settings[name]),
    (typed) => readLengthMm(typed, settings.units, { leastMm: 0, mostMm }),
    { help, numeric: true },
  );
}

/** A setting chosen from a list; `read` turns the choice into the stored value where that is not the text itself. */
export function chosenSetting(
  { problems, settings }: ScreenBook,
  name: SettingName,
  label: string,
  choices: readonly Choice[],
  help?: string,
  read: (value: string) => string | number | null = (value) => value,
): TemplateResult {
  const place = { table: 'settings', id: null, field: name } as const;
  return labelled(
    place,
    label,
    choiceInput({
      place,
      label,
      value: String(settings[name]),
      choices,
      save: (value) => saveSetting<string | number | null>(name)(read(value)),
      problems,
    }),
    help,
  );
}
