/** `work`, put off to the next frame and done once however often it is asked for until then. */
export function inNextFrame(work: () => void): () => void {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      work();
    });
  };
}
