import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';

/** Our own line icons, 20 by 20, drawn in the colour of the text around them. */
const SHAPES = {
  parts: svg`<path d="M3 4.5h14M3 10h14M3 15.5h14M7 4.5v11"/>`,
  cutting: svg`<path d="M3 3.5h14v13H3zM3 9h14M9.5 9v7.5M13 3.5V9"/>`,
  banding: svg`<path d="M3 7.5 12.5 4 17 6v4L7.5 13.5 3 11.5zM3 7.5l4.5 2L17 6M7.5 9.5v4"/><path d="M5 15.5c3 1.5 7 .5 12-2" stroke-dasharray="1.5 2"/>`,
  finish: svg`<path d="M4 3.5h10v4H4zM14 5.5h2.5v4.5h-6.5v2.5"/><path d="M8.5 12.5h3v4.5h-3z"/>`,
  calendar: svg`<path d="M3 4.5h14v12H3zM3 8.5h14M6.5 2.5v3.5M13.5 2.5v3.5"/><path d="M6 11.5h4.5M9 14h5"/>`,
  air: svg`<path d="M2.5 8h9.500a2.300 2.300 0 1 0-2.200-3M2.500 11.500h12.500a2 2 0 1 1-2 2.600M2.500 15h6a1.600 1.600 0 1 1-1.500 2.100"/>`,
  buy: svg`<path d="M2.5 4h2l2 9h8.5l2-6.5H5.2"/><circle cx="8" cy="16" r="1.2"/><circle cx="14" cy="16" r="1.2"/>`,
  ledger: svg`<path d="M4.5 3h11v14h-11zM8 3v14M10.5 7H13M10.5 10H13M10.5 13H13"/>`,
  quotes: svg`<path d="M4.5 2.5h8l3 3v12h-11zM12 2.5v3.5h3.5"/><path d="M7.5 9.500h5M7.5 12h5M7.5 14.5h2.5"/>`,
  catalogue: svg`<path d="M4 3.5h5.5a1.5 1.5 0 0 1 1.5 1.5v12c0-1-.7-1.5-1.5-1.5H4zM16.5 3.5H12.5A1.5 1.5 0 0 0 11 5"/><path d="M16.5 3.5v12H12.5c-.8 0-1.5.5-1.5 1.5"/>`,
  settings: svg`<path d="M3 6h7M14 6h3M3 14h3M10 14h7"/><circle cx="12" cy="6" r="2"/><circle cx="8" cy="14" r="2"/>`,
  undo: svg`<path d="M7.5 4 3.5 8l4 4M3.5 8h8.5a4 4 0 0 1 0 8H8"/>`,
  redo: svg`<path d="m12.5 4 4 4-4 4M16.5 8H8a4 4 0 0 0 0 8h4"/>`,
  plus: svg`<path d="M10 4v12M4 10h12"/>`,
  insert: svg`<path d="M3 4.5h14M3 8.5h14M10 12v6M7 15h6"/>`,
  duplicate: svg`<path d="M7 7h9.5v9.5H7z"/><path d="M13 7V3.5H3.5V13H7"/>`,
  up: svg`<path d="M10 16V4.5M5 9.5l5-5 5 5"/>`,
  down: svg`<path d="M10 4v11.5M5 10.5l5 5 5-5"/>`,
  bin: svg`<path d="M4 5.5h12M8 5.5v-2h4v2M5.5 5.5l.7 11h7.6l.7-11M8.5 8.5v5M11.5 8.5v5"/>`,
  corner: svg`<path d="M4 16.5V10a6 6 0 0 1 6-6h6.5"/><path d="M10 10 5.8 5.8" stroke-dasharray="1.5 1.7"/>`,
  drawing: svg`<path d="M3 5.5h14v9H3zM3 17.5h14M3 17v1M17 17v1"/>`,
  problem: svg`<path d="M10 3 18 16.5H2zM10 8v4M10 14.2v.3"/>`,
  check: svg`<path d="m4 10.5 4 4 8-9"/>`,
  sun: svg`<circle cx="10" cy="10" r="3.3"/><path d="M10 2.5v1.8M10 15.7v1.8M2.5 10h1.8M15.7 10h1.8M4.7 4.7 6 6M14 14l1.3 1.3M15.3 4.7 14 6M6 14l-1.3 1.3"/>`,
  moon: svg`<path d="M16.5 11.8A7 7 0 1 1 8.2 3.5a5.5 5.5 0 0 0 8.3 8.3z"/>`,
  system: svg`<path d="M3 4h14v9.5H3zM7 17h6M10 13.5V17"/>`,
  help: svg`<path d="M7.3 7.5a2.7 2.7 0 1 1 3.8 2.5c-.8.4-1.1.9-1.1 1.8M10 14.6v.3"/><circle cx="10" cy="10" r="7.5"/>`,
  close: svg`<path d="m5 5 10 10M15 5 5 15"/>`,
  caret: svg`<path d="m5.5 8 4.5 4.5L14.5 8"/>`,
  folder: svg`<path d="M3 5h5l1.5 2H17v9H3z"/>`,
  import: svg`<path d="M10 3.5v8M6.5 8l3.5 3.5L13.5 8M3.5 12.5v4h13v-4"/>`,
  export: svg`<path d="M10 11.5v-8M6.5 7 10 3.5 13.5 7M3.5 12.5v4h13v-4"/>`,
  search: svg`<circle cx="8.7" cy="8.7" r="5.2"/><path d="m12.6 12.6 4.4 4.4"/>`,
  filter: svg`<path d="M3 4.5h14l-5.5 6.2v5.3l-3-1.7v-3.6z"/>`,
  sort: svg`<path d="M6.5 16V4.5M3.5 7.5l3-3 3 3M13.5 4v11.5M10.5 12.5l3 3 3-3"/>`,
  columns: svg`<path d="M3 4h14v12H3zM7.7 4v12M12.3 4v12"/>`,
  group: svg`<path d="M3 4.5h14M6.5 8.5h10.5M6.5 12h10.5M3 16h14"/>`,
  more: svg`<path d="M4.5 10h.01M10 10h.01M15.5 10h.01" stroke-width="2.4"/>`,
} as const satisfies Record<string, SVGTemplateResult>;

export type IconName = keyof typeof SHAPES;

/** Decoration only: the control around it carries the name. */
export function icon(name: IconName): TemplateResult {
  return html`<svg
    class="icon"
    viewBox="0 0 20 20"
    width="18"
    height="18"
    fill="none"
    stroke="currentColor"
    stroke-width="1.5"
    stroke-linecap="round"
    stroke-linejoin="round"
    aria-hidden="true"
  >
    ${SHAPES[name]}
  </svg>`;
}
