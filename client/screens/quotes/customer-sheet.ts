import { html, nothing, type TemplateResult } from 'lit-html';
import type { CustomerSheet } from '../../../server/planning/ledger/ledger-plan.ts';
import type { Formats } from '../../format/formats.ts';
import { dateText } from '../ledger/day-text.ts';

const NOT_KNOWN = 'not known yet';

/**
 * What the customer gets to see, on paper and in the preview. It is made from the sheet alone, which holds no cost of
 * materials and no markup.
 */
export function customerSheet(sheet: CustomerSheet, formats: Formats): TemplateResult {
  const { sender, title, customer, date, validUntil, expired, sections, note } = sheet;
  return html`<article class="customer-sheet">
    ${
      sender === '' && date === ''
        ? nothing
        : html`<header>
            <p class="lines">${sender}</p>
            <p class="day">${dateText(date)}</p>
          </header>`
    }
    <h2>Quote: ${title}</h2>
    ${customer === '' ? nothing : html`<p>For ${customer}</p>`}
    ${
      expired === true
        ? html`<p class="expired">This quote expired on ${dateText(validUntil)}.</p>`
        : validUntil === ''
          ? nothing
          : html`<p>Valid until ${dateText(validUntil)}</p>`
    }
    ${
      sections.length === 0
        ? nothing
        : html`<table class="built">
            <thead>
              <tr><th scope="col">What is built</th><th scope="col" class="number">Pieces</th></tr>
            </thead>
            <tbody>
              ${sections.map(
                ({ name, pieces, parts }) => html`<tr>
                  <td>${name === '' ? nothing : html`<b>${name}</b>`}<span class="parts">${parts.join(', ').replaceAll(' x ', ' × ')}</span></td>
                  <td class="number">${pieces === null ? '' : formats.count(pieces)}</td>
                </tr>`,
              )}
            </tbody>
          </table>`
    }
    ${priceTable(sheet, formats)} ${note === '' ? nothing : html`<p class="lines">${note}</p>`}
  </article>`;
}

function priceTable(
  { lines, netMinor, taxPercent, taxMinor, totalMinor }: CustomerSheet,
  formats: Formats,
): TemplateResult {
  const money = (minor: number | null): string => (minor === null ? NOT_KNOWN : formats.money(minor));
  const row = (name: string | TemplateResult, minor: number | null, className = ''): TemplateResult =>
    html`<tr class=${className}><th scope="row">${name}</th><td class="number">${money(minor)}</td></tr>`;
  return html`<table class="price">
    <caption class="visually-hidden">Price</caption>
    <tbody>
      ${lines.map(({ kind, hours, rateMinorPerHour, minor }) =>
        row(
          kind === 'materials'
            ? 'Materials'
            : html`Work${hours === null || rateMinorPerHour === null || hours === 0 ? nothing : `: ${hours} h at ${formats.money(rateMinorPerHour)}`}`,
          minor,
        ),
      )}
      ${
        taxPercent === null
          ? row('Price before tax', totalMinor, 'in-all')
          : html`${row('Price before tax', netMinor)} ${row(`Tax, ${taxPercent} %`, taxMinor)}
              ${row('Total', totalMinor, 'in-all')}`
      }
    </tbody>
  </table>`;
}
