import { html } from 'lit-html';
import type { BuyingAnswer } from '../../../server/http/contract.ts';
import { dialogEnd, dialogText, dialogValue, sendDialog } from '../../fields/dialog-form.ts';
import { projectToday } from '../../fields/project-today.ts';
import { saveChanges } from '../../fields/save.ts';
import type { ScreenBook } from '../../fields/screen-book.ts';
import { readAmount } from '../../format/read-amount.ts';
import { refused } from '../../format/reading.ts';
import { openDialog } from '../../shell/open-dialog.ts';

/** Notes what was taken from stock by hand: spilled, used on a trial, given away. */
export function askToTake(
  { formats, settings }: ScreenBook,
  { id, name, unit, now }: BuyingAnswer['stock'][number],
): void {
  openDialog(
    `Take from ${name}`,
    (close) => html`<form
      method="dialog"
      novalidate
      @submit=${(event: SubmitEvent) =>
        void sendDialog(event, close, (form) =>
          saveChanges(
            [
              {
                op: 'insert',
                table: 'stockUses',
                values: {
                  productId: id,
                  date: dialogText(form, 'date'),
                  amount: dialogValue(form, 'amount', (typed) => {
                    const reading = readAmount(typed, unit, settings.units);
                    return reading.ok && reading.value === 0 ? refused('Write how much was taken.') : reading;
                  }),
                  note: dialogText(form, 'note'),
                },
              },
            ],
            `take from ${name}`,
          ),
        )}
    >
      <h2>Take from ${name}</h2>
      <p class="aside-words">
        ${formats.amount(now.value, unit)} in stock. Coats take by themselves when they are ticked off; note here what was spilled, tried or given away.
      </p>
      <div class="form-grid">
        <label class="field"
          ><span>How much</span
          ><input name="amount" autocomplete="off" placeholder=${unit === 'L' ? (settings.units === 'metric' ? '0.2 L' : '8 fl oz') : ''}
        /></label>
        <label class="field"><span>Date</span><input type="date" name="date" max="9999-12-31" .value=${projectToday()} /></label>
        <label class="field"><span>Note</span><input name="note" maxlength="200" autocomplete="off" placeholder="spilled, trial piece" /></label>
      </div>
      ${dialogEnd(close, 'Take')}
    </form>`,
  );
}
