import {
  formatNumber,
  formatQuantity,
  parseQuantity,
  type Quantity,
  type UnitSystem,
} from '../../model/units';

/** A figure as it stands in a field: as exact as anybody types, without idle zeros. */
export function entryText(value: number | null, quantity: Quantity, units: UnitSystem): string {
  if (value === null) return '';
  const text =
    quantity === 'number' ? formatNumber(value, 4) : formatQuantity(value, quantity, units, { fine: true });
  return text.replace(/(\.\d*?)0+(?=\D|$)/, '$1').replace(/\.(?=\D|$)/, '');
}

export type Entry =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly sentence: string };

/** Reads a field. Empty is no figure, where that is allowed. */
export function readEntry(text: string, quantity: Quantity, system: UnitSystem, mayBeEmpty: boolean): Entry {
  const plain = text.replace(/[\u202f\u00a0]/g, '').trim();
  if (plain === '') {
    return mayBeEmpty ? { ok: true, value: null } : { ok: false, sentence: 'Type a figure.' };
  }
  return parseQuantity(plain, { quantity, system });
}
