import type { TemplateResult } from 'lit-html';
import type { Figure } from '../../server/planning/figure.ts';
import type { Formats } from '../format/formats.ts';
import { figureButton } from './figure-button.ts';

/** A number of an answer that carries its working; `at` is its path, such as `ledger/orders/7/open`. */
export function heldFigure(formats: Formats, at: string, figure: Figure, name?: string): TemplateResult {
  return figureButton(at, formats.figure(figure.value, figure.unit), name);
}
