import type { AirIndoors } from './air-plan.ts';

/**
 * Days after which what a coat of paint gives off had become steady in chamber tests at 300 g/m2. Source: Kim et al.,
 * Journal of Hazardous Materials 187 (2011) 52-57. The only figure in days that was seen for coatings as a whole.
 */
export const STEADY_AFTER_DAYS = 7;
export const STEADY_SOURCE =
  'Kim et al., Journal of Hazardous Materials 187 (2011) 52-57: paint steady after 7 days';

/** What is published and said about when a coat has stopped giving off vapour. It does not agree, and is not averaged. */
export const INDOORS_ADVICE: AirIndoors['advice'] = [
  {
    what: 'What a coat of paint gives off',
    says: 'steady after 7 days in chamber tests',
    source: 'Kim et al., Journal of Hazardous Materials 187 (2011) 52-57',
  },
  {
    what: 'Latex paint on stainless steel',
    says: 'gives off vapour for 3 to 4 days',
    source: 'Sparks et al., Indoor Air 9 (1999) 10-17',
  },
  {
    what: 'Latex paint on gypsum board',
    says: 'gives off vapour for over 200 days',
    source: 'Sparks et al., Indoor Air 9 (1999) 10-17',
  },
  {
    what: 'Solvent-based wood stain',
    says: 'fades more slowly than waterborne; no number of days was seen',
    source: 'de Gennaro et al., Atmospheric Environment 115 (2015) 53-61',
  },
  {
    what: 'A varnished crib',
    says: 'vapour is over after 24 hours',
    source: 'home-improvement forum, one reply',
  },
  {
    what: 'A varnished crib',
    says: 'wait 3 to 4 weeks; while it smells, it still cures',
    source: 'woodworking forum, several replies',
  },
  {
    what: 'A varnished dresser',
    says: 'until the smell is gone, 2 weeks if there is no hurry, a month to full cure',
    source: 'woodworking weblog, replies collected',
  },
];
