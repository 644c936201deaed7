import { html, nothing, type TemplateResult } from 'lit-html';
import type { Evidence } from '../../../server/planning/product.ts';
import { BASIS_TONE, BASIS_WORDS, sourceWords } from './evidence-words.ts';

/** How far a figure can be leaned on: basis, source with date, note. */
export function renderEvidence(evidence: Evidence): TemplateResult {
  const source = sourceWords(evidence);
  return html`<span class="evidence">
    <span class="chip ${BASIS_TONE[evidence.basis]}">${BASIS_WORDS[evidence.basis]}</span>
    ${source === '' ? nothing : html`<span>${source}</span>`}
    ${evidence.note == null || evidence.note === '' ? nothing : html`<span class="evidence-note">${evidence.note}</span>`}
  </span>`;
}
