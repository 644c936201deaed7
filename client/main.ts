import '@fontsource-variable/source-sans-3';
import './style/tokens.css';
import './style/base.css';
import { render } from 'lit-html';
import { renderShell } from './shell/render-shell.ts';
import { listenForShortcuts } from './shell/shortcuts.ts';
import { start } from './state/start.ts';
import { getState, subscribe } from './state/store.ts';

const root = document.querySelector<HTMLElement>('#app');
if (root === null) throw new Error('index.html has no #app');

let drawing = false;

/** Draws once per frame at most, however many changes of state fall into it. */
function draw(): void {
  if (drawing || root === null) return;
  drawing = true;
  queueMicrotask(() => {
    drawing = false;
    render(renderShell(getState()), root);
  });
}

subscribe(draw);
draw();
listenForShortcuts();
void start();
