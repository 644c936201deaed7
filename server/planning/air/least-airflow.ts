import { AIRFLOW_TOLERANCE } from './constants.ts';

/**
 * What is the least airflow at which a measure of the air comes under its limit?
 *
 * @param measure the measure at an airflow in m3/min; must not rise with airflow
 * @param limit the measure must be below this
 * @param enoughM3PerMin an airflow at which it is known to be below, m3/min
 * @returns airflow, m3/min: 0 when a closed room is under the limit already, else at most a ten-thousandth too much,
 *   and never too little
 *
 * Source: bisection. Valid range: enoughM3PerMin from 0 and truly enough, else a RangeError. Departures: none.
 * Example: a measure of 10 / airflow and a limit of 2: 5 m3/min.
 */
export function leastAirflow(
  measure: (airflowM3PerMin: number) => number,
  limit: number,
  enoughM3PerMin: number,
): number {
  if (measure(0) < limit) return 0;
  if (!(measure(enoughM3PerMin) < limit))
    throw new RangeError(`leastAirflow: ${enoughM3PerMin} m3/min must be enough to come under ${limit}`);
  let low = 0;
  let high = enoughM3PerMin;
  while (high - low > AIRFLOW_TOLERANCE * high) {
    const middle = (low + high) / 2;
    if (measure(middle) < limit) high = middle;
    else low = middle;
  }
  return high;
}
