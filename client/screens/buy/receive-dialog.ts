import { html } from 'lit-html';
import type { Change, OrderLineRow } from '../../../server/http/contract.ts';
import { dialogEnd, dialogText, dialogValue, sendDialog } from '../../fields/dialog-form.ts';
import type { Refusal } from '../../fields/faults.ts';
import { projectToday } from '../../fields/project-today.ts';
import { saveChanges } from '../../fields/save.ts';
import { readNumber } from '../../format/read-number.ts';
import { openDialog } from '../../shell/open-dialog.ts';

export interface Arriving {
  readonly line: OrderLineRow;
  readonly name: string;
  /** Offered as the count. */
  readonly toCome: number;
}

const MOST_PACKS = 1_000_000;

/** Notes what came of an order: all of it or a part, on which day, of which batch, and where it was put. */
export function askToReceive(title: string, arriving: readonly Arriving[]): void {
  askForPacks({
    title,
    help: 'A count of 0 leaves a line for a later delivery. Batch and place help to find the right can again.',
    send: 'Received',
    kind: 'received',
    packs: arriving.map(({ line, name, toCome }) => ({ line, name, count: toCome })),
    label: 'receive a delivery',
  });
}

/** Notes what is sent back to the supplier. */
export function askToReturn(line: OrderLineRow, name: string): void {
  askForPacks({
    title: `Send back ${name}`,
    help: 'What is sent back leaves the stock. Enter the money that came back as a refund in the ledger.',
    send: 'Sent back',
    kind: 'returned',
    packs: [{ line, name, count: 1 }],
    label: `send back ${name}`,
  });
}

function askForPacks(ask: {
  readonly title: string;
  readonly help: string;
  readonly send: string;
  readonly kind: 'received' | 'returned';
  readonly packs: readonly { readonly line: OrderLineRow; readonly name: string; readonly count: number }[];
  readonly label: string;
}): void {
  const { title, help, send, kind, packs, label } = ask;
  const received = kind === 'received';
  openDialog(
    title,
    (close) => html`<form
      method="dialog"
      class="order-form"
      @submit=${(event: SubmitEvent) =>
        void sendDialog(
          event,
          close,
          (form) => save(changes(form)),
          `[data-at="orderLines/${packs[0]?.line.id}/invoicedPriceMinor"]`,
        )}
    >
      <h2>${title}</h2>
      <p class="aside-words">${help}</p>
      <label class="field"><span>${received ? 'Came on' : 'Sent back on'}</span><input type="date" name="date" required .value=${projectToday()} /></label>
      <div class="order-lines" role="group" aria-label="Lines">
        ${packs.map(
          ({ name, count }, index) => html`<div class="order-line ${received ? 'receive' : ''}">
            <span class="order-name">${name}</span>
            <label class="field"
              ><span>Count</span
              ><input name="count-${index}" inputmode="numeric" autocomplete="off" aria-label="Count of ${name}" .value=${String(count)}
            /></label>
            ${
              received
                ? html`<label class="field"
                      ><span>Batch</span><input name="batch-${index}" maxlength="200" autocomplete="off" aria-label="Batch of ${name}" /></label
                    ><label class="field"
                      ><span>Place</span><input name="place-${index}" maxlength="200" autocomplete="off" aria-label="Place of ${name}"
                    /></label>`
                : ''
            }
          </div>`,
        )}
      </div>
      ${dialogEnd(close, send)}
    </form>`,
  );

  async function save(made: readonly Change[]): Promise<Refusal | null> {
    if (made.length > 0) return saveChanges(made, label);
    return { message: 'Every count is 0, so there is nothing to note.', wayOut: 'Enter how many packs.' };
  }

  function changes(form: HTMLFormElement): readonly Change[] {
    const date = dialogText(form, 'date');
    return packs.flatMap(({ line }, index): Change[] => {
      const count = dialogValue(form, `count-${index}`, (typed) =>
        readNumber(typed, { least: 0, most: MOST_PACKS, whole: true }),
      );
      if (count === 0) return [];
      const found = received
        ? { batch: dialogText(form, `batch-${index}`), place: dialogText(form, `place-${index}`) }
        : {};
      return [
        {
          op: 'insert',
          table: 'receipts',
          values: { orderLineId: line.id, kind, date, count, ...found },
        },
      ];
    });
  }
}
