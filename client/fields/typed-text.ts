import { noChange } from 'lit-html';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit-html/directive.js';

/** Present on an input while it holds something typed that is not stored (yet). */
const TYPING = 'typing';

/**
 * Shows `text` in an input, but never over something the user is typing or has typed and not had accepted: a redraw
 * in the middle of a word (another window saved, a sum arrived) leaves the word alone.
 */
class TypedText extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new Error('typedText stands in the tag of an input');
  }

  render(_text: string): typeof noChange {
    return noChange;
  }

  override update(part: ElementPart, [text]: [string]): typeof noChange {
    const input = part.element as HTMLInputElement;
    if (input.dataset[TYPING] === undefined && input.value !== text) input.value = text;
    return noChange;
  }
}

export const typedText = directive(TypedText);

export function markTyping(input: HTMLElement): void {
  input.dataset[TYPING] = '';
}

export function clearTyping(input: HTMLElement): void {
  delete input.dataset[TYPING];
}
