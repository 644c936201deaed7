import { z } from 'zod';

/** Longest name of a product, pack or supplier, characters. */
const LONGEST_NAME = 200;
/** Longest stable key, characters. */
const LONGEST_KEY = 100;

/** A stable key of the catalogue: "birch-ply-18". */
export const slug = z
  .string()
  .max(LONGEST_KEY)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be lower-case words and digits joined by hyphens');

/** A name as shown to people. */
export const name = z
  .string()
  .max(LONGEST_NAME)
  .regex(/^\S(.*\S)?$/, 'must not be empty, nor begin or end with a space');
