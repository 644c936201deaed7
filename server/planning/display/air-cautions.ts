/**
 * What stands beside every air check, whatever its verdict. Sources: the rag caution is the Wood Handbook, FPL-GTR-190,
 * chapter 16; the rest is common practice, no source.
 */
export const AIR_CAUTIONS: readonly string[] = [
  'The label and the safety data sheet of each product come first; this reckoning never overrules them.',
  'Put out pilot lights, burners and heaters, and keep sparks and switches away, until the air is clear.',
  'A room is never evenly mixed: close to wet work and near the floor the vapour is much stronger than the figure here.',
  'Use a fan that cannot spark in the vapour, and draw the air away from yourself and the work.',
  'Wear a respirator with organic-vapour cartridges when you are in the room; a dust mask does not stop vapour.',
  'Put rags wet with oil, oil stain or oil varnish into a water-filled metal can that closes tightly, at once: they can heat up and catch fire by themselves.',
  'Finishes with isocyanates (two-part polyurethanes) are not for a home shop.',
  'Exposure limits are made for healthy adults at work; children, pregnant women and the sick need far cleaner air.',
  'Local codes and a licensed professional decide about spray booths, exhaust and electrical equipment.',
];
