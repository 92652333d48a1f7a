import { type Quantity, type Unit, unitsOf } from './table';

/** What was typed cannot be read; the message is for the person who typed it. */
export class Refused extends Error {}

/** A value on its way through the sum: in the file's unit, or `bare` while no unit has been named. */
interface Term {
  readonly value: number;
  readonly bare: boolean;
}

const wanted: Readonly<Record<Quantity, string>> = {
  length: 'a length, such as 12.5 mm, 3 1/2 in or 412 + 36',
  mass: 'a mass, such as 236 g, 4.5 oz or 1.2 kg - 30 g',
  volume: 'a volume, such as 500 ml, 1.5 l or 16 fl oz (US)',
  angle: 'an angle in degrees, such as -2.5',
  time: 'a time, such as 90 s or 11 min 40 s',
  ratio: 'a percentage, such as 12.5 %',
  number: 'a number, such as 0.8',
};

/**
 * A recursive reader of one typed quantity:
 *
 *     sum     := term (("+" | "-") term)*
 *     term    := factor (("*" | "/") factor)*
 *     factor  := ("+" | "-") factor | "(" sum ")" unit? | measure
 *     measure := amount (unit (amount unit)*)?             1 ft 6 in, units falling
 *     amount  := number | number? digits "/" digits        412, 3 1/2
 */
export class QuantityReader {
  private at = 0;

  /** `bareSize` is what a number without a unit counts for, in the file's unit. */
  constructor(
    private readonly text: string,
    private readonly quantity: Quantity,
    private readonly bareSize: number,
  ) {}

  value(): number {
    if (this.text === '') throw new Refused(`Expected ${wanted[this.quantity]}.`);
    const whole = this.sum();
    if (this.rest() !== '') throw this.unexpected();
    return this.sized(whole);
  }

  private sum(): Term {
    let total = this.term();
    for (let sign = this.take(/^[+-]/); sign; sign = this.take(/^[+-]/)) {
      const next = this.term();
      const factor = sign === '-' ? -1 : 1;
      total =
        total.bare && next.bare
          ? { value: total.value + factor * next.value, bare: true }
          : { value: this.sized(total) + factor * this.sized(next), bare: false };
    }
    return total;
  }

  private term(): Term {
    let product = this.factor();
    for (let sign = this.take(/^[*/]/); sign; sign = this.take(/^[*/]/)) {
      const next = this.factor();
      if (sign === '/' && !next.bare) throw new Refused('Divide by a plain number, without a unit.');
      if (!product.bare && !next.bare) throw new Refused('Only one side of a product may carry a unit.');
      product = {
        value: sign === '*' ? product.value * next.value : product.value / next.value,
        bare: product.bare && next.bare,
      };
    }
    return product;
  }

  private factor(): Term {
    const sign = this.take(/^[+-]/);
    if (sign) {
      const { value, bare } = this.factor();
      return { value: sign === '-' ? -value : value, bare };
    }
    if (!this.take(/^\(/)) return this.measure();
    const inner = this.sum();
    if (!this.take(/^\)/)) throw new Refused('A bracket is not closed.');
    const unit = inner.bare ? this.unit() : null;
    return unit ? { value: inner.value * unit.size, bare: false } : inner;
  }

  private measure(): Term {
    const first = this.amount();
    let unit = this.unit();
    if (!unit) return { value: first, bare: true };
    let value = first * unit.size;
    while (/^[\d.,]/.test(this.rest())) {
      const amount = this.amount();
      const smaller = this.unit();
      if (!smaller) throw new Refused(`Say the unit of the last figure, as in 1 ft 6 in.`);
      if (smaller.size >= unit.size) throw new Refused(`${smaller.symbol} cannot follow ${unit.symbol}.`);
      value += amount * smaller.size;
      unit = smaller;
    }
    return { value, bare: false };
  }

  private amount(): number {
    if (/^\d+-\d+ ?\/ ?\d/.test(this.rest())) {
      throw new Refused('A hyphen before a fraction can be read two ways: write 3 1/2, or 3 - 1/2.');
    }
    const mixed = /^(\d+) +([1-9]\d*) ?\/ ?(\d+)/.exec(this.rest())?.slice(1).map(Number);
    if (mixed) {
      const [whole = 0, numerator = 0, denominator = 0] = mixed;
      // 10 500/2 is a grouped number to be halved, not ten and five hundred halves.
      if (numerator < denominator && this.take(/^\d+ +\d+ ?\/ ?\d+/)) return whole + numerator / denominator;
    }
    const fraction = this.take(/^\d+ ?\/ ?\d+(?![\d.,])/)
      ?.split('/')
      .map(Number);
    if (fraction) return (fraction[0] ?? 0) / (fraction[1] ?? 0);
    const grouped = this.take(/^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?!\d)/);
    if (grouped) return Number(grouped.replaceAll(' ', '').replace(',', '.'));
    const american = this.take(/^\d{1,3}(?:,\d{3})+\.\d+/);
    if (american) return Number(american.replaceAll(',', ''));
    const number = this.take(/^(?:\d+(?:[.,]\d*)?|[.,]\d+)/);
    if (!number) throw this.unexpected();
    if (/^[1-9]\d{0,2},\d{3}$/.test(number)) {
      const [whole, rest] = number.split(',');
      throw new Refused(`${number} can be read two ways: write ${whole}${rest}, or ${whole}.${rest}.`);
    }
    return Number(number.replace(',', '.'));
  }

  private unit(): Unit | null {
    const typed = this.take(/^(?:(?:us )?fl\.? ?oz|[a-z]+3?|["'°%])\.?/);
    if (!typed) return null;
    const spelling = typed.replaceAll('.', '').replace('fl oz', 'floz').replace('us ', '');
    const units = unitsOf[this.quantity];
    const found = units.find(({ spellings }) => spellings.includes(spelling));
    if (found) return found;
    const symbols = units.map(({ symbol }) => symbol).filter(Boolean);
    const choice = symbols.length > 0 ? `Use ${symbols.join(', ')}.` : 'Use a plain number.';
    throw new Refused(`"${typed}" is not a unit of ${this.quantity} here. ${choice}`);
  }

  private sized({ value, bare }: Term): number {
    return bare ? value * this.bareSize : value;
  }

  private rest(): string {
    return this.text.slice(this.at).trimStart();
  }

  /** Takes what matches at the reading point, spaces before it skipped. */
  private take(pattern: RegExp): string | null {
    const rest = this.rest();
    const match = pattern.exec(rest)?.[0];
    if (!match) return null;
    this.at = this.text.length - rest.length + match.length;
    return match;
  }

  private unexpected(): Refused {
    const rest = this.rest();
    return new Refused(
      rest === ''
        ? `"${this.text}" stops short. Expected ${wanted[this.quantity]}.`
        : `Cannot read "${rest}". Expected ${wanted[this.quantity]}.`,
    );
  }
}
