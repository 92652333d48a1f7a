import { QuantityReader, Refused } from './reader';
import { ownUnit, type Quantity, type UnitSystem } from './table';

export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly sentence: string };

/** Far longer than any sum that is typed, short enough that brackets in brackets do not use up the stack. */
const LONGEST_ENTRY = 500;

/**
 * Reads what a person typed: a number, with or without a unit, or a sum of them (`412+36`, `1.2 kg - 30`,
 * `3 1/2 in`, `(150 + 305) / 2`). The value comes in the file's unit: mm, g, ml, degrees, s, percent.
 * A bare number is in the person's own unit. A comma is a decimal comma; what could as well be a
 * thousands comma, or a mixed number with a hyphen, is refused with a sentence that says so.
 */
export function parseQuantity(
  text: string,
  { quantity, system }: { readonly quantity: Quantity; readonly system: UnitSystem },
): Parsed {
  if (text.length > LONGEST_ENTRY) {
    return {
      ok: false,
      sentence: `That is too long to be read: expected at most ${LONGEST_ENTRY} characters.`,
    };
  }
  try {
    const value = new QuantityReader(plain(text), quantity, ownUnit(quantity, system).size).value();
    if (!Number.isFinite(value)) return { ok: false, sentence: 'That has no finite value.' };
    return { ok: true, value: withoutNoise(value) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, sentence: error.message };
    throw error;
  }
}

/** 3.5 × 25.4 as 88.9, not 88.89999999999999: fifteen digits are more than anybody types. Also no −0. */
const withoutNoise = (value: number) => Number(value.toPrecision(15)) + 0;

/** The same text in plain characters: ½ as 1/2, a true minus as a hyphen, curly quotes straight. */
function plain(typed: string): string {
  return typed
    .replace(/[¼-¾⅐-⅞]/g, ' $&')
    .normalize('NFKC')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/×/g, '*')
    .replace(/[÷⁄]/g, '/')
    .replace(/′′|''|[”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .toLowerCase()
    .trim();
}
