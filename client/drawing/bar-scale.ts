import { scaleLinear } from 'd3-scale';

/** Shares of a bar's width in percent, for values from 0 to `most`; everything is 0 while nothing is known. */
export function barScale(most: number): (value: number) => number {
  if (!(most > 0)) return () => 0;
  return scaleLinear().domain([0, most]).range([0, 100]).clamp(true);
}
