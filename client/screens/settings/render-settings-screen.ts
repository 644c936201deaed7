import '../../fields/fields.css';
import './settings.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { arrive } from '../../fields/arrive.ts';
import { type ScreenBook, screenBook } from '../../fields/screen-book.ts';
import { asTyped } from '../../fields/text-input.ts';
import { readNumber, readOptionalNumber } from '../../format/read-number.ts';
import { readShare } from '../../format/read-share.ts';
import { refused } from '../../format/reading.ts';
import type { AppState } from '../../state/store.ts';
import { readCurrency } from '../catalogue/pack-fields.ts';
import { cutStagesSetting } from './cut-stages-setting.ts';
import { renderBandingOrder } from './render-banding-order.ts';
import { renderMeasurements } from './render-measurements.ts';
import { renderSizes } from './render-sizes.ts';
import { chosenSetting, lengthSetting, typedSetting } from './setting-field.ts';

/** How the project prints and what it reckons with. */
export function renderSettingsScreen(state: AppState): TemplateResult {
  const book = screenBook(state);
  if (book === null) return html``;
  arrive(state);
  return html`<section class="page settings-screen" aria-labelledby="settings-title">
    <div class="page-head">
      <div>
        <h1 id="settings-title">Settings</h1>
        <p>Of this project. Every change is taken at once and can be undone.</p>
      </div>
    </div>
    <div class="settings-columns">
      ${printing(book)} ${cutting(book)} ${cost(book)} ${banding(book)}
    </div>
    ${renderSizes(book)} ${renderMeasurements(book)}
  </section>`;
}

function group(id: string, title: string, words: string, content: unknown): TemplateResult {
  return html`<section class="panel" aria-labelledby="settings-${id}">
    <header>
      <div><h2 id="settings-${id}">${title}</h2><p>${words}</p></div>
    </header>
    <div class="body"><div class="setting-grid">${content}</div></div>
  </section>`;
}

const DENOMINATORS = [2, 4, 8, 16, 32] as const;

function printing(book: ScreenBook): TemplateResult {
  const { settings } = book;
  return group(
    'printing',
    'Name and units',
    'How figures are shown. What is stored stays the same to the last digit.',
    html`
      <div class="setting-wide">
        ${typedSetting(book, 'name', 'Project name', settings.name, (typed) => (typed.trim() === '' ? refused('A project needs a name.') : asTyped(typed)))}
      </div>
      ${chosenSetting(book, 'units', 'Units', [
        { value: 'metric', text: 'millimetres, litres' },
        { value: 'us', text: 'inches, US gallons' },
      ])}
      ${
        settings.units === 'metric'
          ? nothing
          : html`${chosenSetting(book, 'inchStyle', 'Inches as', [
              { value: 'fraction', text: 'fractions, 23 5/8"' },
              { value: 'decimal', text: 'decimals, 23.625"' },
            ])}
            ${
              settings.inchStyle === 'decimal'
                ? nothing
                : chosenSetting(
                    book,
                    'inchDenominator',
                    'Finest fraction',
                    DENOMINATORS.map((denominator) => ({
                      value: String(denominator),
                      text: `1/${denominator}"`,
                    })),
                    'anything finer is marked ≈',
                    Number,
                  )
            }`
      }
    `,
  );
}

function cost(book: ScreenBook): TemplateResult {
  const { settings, formats } = book;
  return group(
    'cost',
    'Cost and finish',
    'Prices of the catalogue are before tax.',
    html`
      ${typedSetting(book, 'currency', 'Currency', settings.currency, readCurrency, { help: 'three letters; packs priced in it are used' })}
      ${typedSetting(
        book,
        'taxPercent',
        'Tax',
        settings.taxPercent === null ? '' : `${settings.taxPercent} %`,
        (typed) => readOptionalNumber(typed.replace(/%\s*$/, ''), { least: 0, most: 100 }),
        { help: 'left empty: totals are before tax', placeholder: 'not said', numeric: true },
      )}
      ${chosenSetting(
        book,
        'coverageChoice',
        'Reckon coverage',
        [
          { value: 'low', text: 'low: buy enough' },
          { value: 'typical', text: 'typical' },
          { value: 'high', text: 'high: buy little' },
        ],
        'which end of a printed range',
      )}
      ${typedSetting(
        book,
        'finishLoss',
        'Finish lost',
        formats.share(settings.finishLoss),
        (typed) => readShare(typed, { least: 0, most: 90 }),
        { help: 'spills, filters, wet edges', numeric: true },
      )}
    `,
  );
}

function banding(book: ScreenBook): TemplateResult {
  const { settings } = book;
  return group(
    'banding',
    'Edge banding',
    'Later strips cover the ends of earlier ones.',
    html`
      ${lengthSetting(book, 'overhangMm', 'Overhang', 1000, 'at each end of a strip')}
      ${lengthSetting(book, 'trimAllowanceMm', 'Trim allowance', 100, 'band beyond the panel, each face')}
      ${typedSetting(
        book,
        'spareStrips',
        'Spare strips',
        String(settings.spareStrips),
        (typed) => readNumber(typed, { least: 0, most: 100, whole: true }),
        { help: 'of each banding, as long as its longest', numeric: true },
      )}
      ${renderBandingOrder(book)}
    `,
  );
}

function cutting(book: ScreenBook): TemplateResult {
  return group(
    'cutting',
    'Cutting',
    'What the saw takes.',
    html`
      ${lengthSetting(book, 'kerfMm', 'Saw kerf', 50, 'lost at every cut')}
      ${lengthSetting(book, 'sheetTrimMm', 'Sheet trim', 500, 'off each side of a full sheet')}
      ${cutStagesSetting(book)}
    `,
  );
}
