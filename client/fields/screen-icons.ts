import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';

/** Icons only the screens use, drawn like the shell's: 20 by 20, lines in the colour of the text. */
const SHAPES = {
  back: svg`<path d="M12 4 6 10l6 6"/>`,
  print: svg`<path d="M6 7.5v-4h8v4M6 14H3V7.5h14V14h-3"/><path d="M6 11.5h8v5H6z"/>`,
  search: svg`<circle cx="8.8" cy="8.8" r="5.3"/><path d="m12.8 12.8 4 4"/>`,
  pencil: svg`<path d="m4 16 .8-3.4L13.5 4 16 6.5l-8.6 8.7z"/>`,
  caution: svg`<path d="M10 3.5 17.5 16.5h-15zM10 8v4M10 14.2v.2"/>`,
  restore: svg`<path d="M4 4.5v4h4"/><path d="M4.3 8.5a6.3 6.3 0 1 1-.4 3.6"/>`,
  archive: svg`<path d="M3 4h14v3.5H3zM4.5 7.5v8.500h11V7.500M8 11h4"/>`,
} as const satisfies Record<string, SVGTemplateResult>;

export function screenIcon(name: keyof typeof SHAPES): TemplateResult {
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
