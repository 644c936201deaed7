import type { TemplateResult } from 'lit-html';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { chosenSetting } from './setting-field.ts';

/** No limit, as a choice. */
const ANY = 'null';

/** In how many stages a sheet may be cut: shown among the settings and where it takes effect, on the cutting screen. */
export function cutStagesSetting(book: ScreenBook): TemplateResult {
  return chosenSetting(
    book,
    'cutStages',
    'Stages of cuts',
    [
      { value: ANY, text: 'any number' },
      { value: '3', text: 'at most 3' },
      { value: '2', text: 'at most 2' },
    ],
    'all cuts of one direction are a stage; trimming a part is none',
    (value) => (value === ANY ? null : Number(value)),
  );
}
