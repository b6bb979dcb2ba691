/** Cuts a unit's text into factors. Grammar: factors joined by · * × - or a blank, divided by / or 'per', raised by ^, 2 or ², in brackets. */
import type { Result } from './types.ts';
import { ok, refuse } from './types.ts';
import type { Piece } from './unit-symbol.ts';
import { symbolOf } from './unit-symbol.ts';
import type { Atom } from './unit-table.ts';
import { lookUp, REFUSED_SPELLINGS, runTogether } from './unit-table.ts';
import type { Token } from './unit-tokens.ts';
import { cutUnit, Refusal, stop } from './unit-tokens.ts';

/** One unit, or a bare number such as the 1000 of V/1000 r/min, with its exponent. */
export interface Factor {
  readonly of: Atom | number;
  readonly power: number;
  /** Joined to the one before with a hyphen, as on plates. */
  readonly hyphen: boolean;
}

function wordAtoms(word: string): readonly Atom[] {
  if (word === 'r_min') return [lookUp('r/min')!];
  const refused = REFUSED_SPELLINGS.get(word.toLowerCase());
  if (refused)
    stop({
      code: 'ambiguous',
      message: `“${word}” ${refused.says}. Write ${refused.instead.join(' or ')}.`,
      suggestion: refused.instead[0],
      readings: refused.instead,
    });
  const exact = lookUp(word);
  const pair = runTogether(word);
  // The table wins where it has the very spelling (nm), the pair where only the case differs (NM, OZIN).
  if (pair && (word !== 'nm' || !exact)) return pair.map((part) => lookUp(part)!);
  if (exact) return [exact];
  return stop({
    code: 'unit-unknown',
    message: `The unit “${word.slice(0, 30)}” is not known here.`,
    where: word,
  });
}

const piece = ({ of, power, hyphen }: Factor): Piece => ({
  symbol: typeof of === 'number' ? String(of) : of.print,
  power,
  hyphen,
});

class Reader {
  private next = 0;
  private depth = 0;
  private readonly tokens: readonly Token[];
  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  private peek(ahead = 0): Token | undefined {
    return this.tokens[this.next + ahead];
  }

  private isOperator(text: string, ahead = 0): boolean {
    const t = this.peek(ahead);
    return t?.kind === 'operator' && t.text === text;
  }

  private isPer(): boolean {
    const t = this.peek();
    return this.isOperator('/') || (t?.kind === 'word' && /^per$/i.test(t.text));
  }

  all(): Factor[] {
    const factors = this.product();
    if (this.peek())
      stop({ code: 'malformed', message: 'A closing bracket stands in the unit without its opening one.' });
    return factors;
  }

  private product(): Factor[] {
    const out: Factor[] = [];
    let divided = false;
    const behind = new Set<Factor>();
    if (!this.isPer()) out.push(...this.hyphened());
    while (this.peek() && !this.isOperator(')')) {
      if (this.isPer()) {
        this.next++;
        divided = true;
        out.push(...this.hyphened().map((f) => ({ ...f, power: -f.power })));
        continue;
      }
      if (this.isOperator('·')) this.next++;
      const factors = this.hyphened();
      if (divided) for (const f of factors) behind.add(f);
      out.push(...factors);
    }
    if (behind.size > 0) {
      const readings = [
        symbolOf(out.map((f) => piece(behind.has(f) ? { ...f, power: -f.power } : f))),
        symbolOf(out.map(piece)),
      ];
      stop({
        code: 'ambiguous',
        message: `A stroke and then a multiplication can be read two ways. Put brackets round what is below the stroke: ${readings.join(' or ')}.`,
        // Inside a bracket these are only a part of the unit.
        ...(this.depth === 0 ? { readings } : {}),
      });
    }
    return out;
  }

  /** What a hyphen joins belongs together even below a stroke: V/oz-in. So does a number and its unit: V/1000 rpm. */
  private hyphened(): Factor[] {
    const out = this.raised();
    const [first] = out;
    if (
      out.length === 1 &&
      typeof first?.of === 'number' &&
      first.power === 1 &&
      this.peek()?.kind === 'word' &&
      !this.isPer()
    ) {
      const unit = this.raised();
      const [only] = unit;
      // '1000 min⁻¹' on a plate are turns per minute.
      if (
        only &&
        unit.length === 1 &&
        typeof only.of !== 'number' &&
        only.of.print === 'min' &&
        only.power === -1
      )
        out.push({ of: lookUp('r/min')!, power: 1, hyphen: false });
      else out.push(...unit);
    }
    while (this.isOperator('-')) {
      this.next++;
      const [head, ...rest] = this.raised();
      if (head) out.push({ ...head, hyphen: true }, ...rest);
    }
    return out;
  }

  private raised(): Factor[] {
    const root = this.isOperator('√');
    if (root) this.next++;
    const inner = this.primary();
    const exponent = this.exponent() * (root ? 0.5 : 1);
    if (exponent === 1) return inner.factors;
    // An exponent behind words run together (kgcm2) belongs to the last of them, behind a bracket to all.
    return inner.factors.map((f, i) =>
      inner.bracket || root || i === inner.factors.length - 1 ? { ...f, power: f.power * exponent } : f,
    );
  }

  private primary(): { factors: Factor[]; bracket: boolean } {
    const token = this.peek();
    if (!token)
      return stop({ code: 'malformed', message: 'The unit breaks off: something is missing at its end.' });
    this.next++;
    if (token.kind === 'operator') {
      if (token.text !== '(')
        return stop({
          code: 'malformed',
          message: `In the unit, “${token.text}” stands where a unit should be.`,
        });
      this.depth++;
      const factors = this.product();
      this.depth--;
      if (!this.isOperator(')'))
        return stop({ code: 'malformed', message: 'In the unit, a bracket is not closed.' });
      this.next++;
      return { factors, bracket: true };
    }
    if (token.kind === 'number')
      return { factors: [{ of: token.value, power: 1, hyphen: false }], bracket: false };
    return { factors: wordAtoms(token.text).map((of) => ({ of, power: 1, hyphen: false })), bracket: false };
  }

  private exponent(): number {
    let sign = 1;
    const token = this.peek();
    const before = this.tokens[this.next - 1];
    if (this.isOperator('^') || this.isOperator('**')) {
      this.next++;
      const bracket = this.isOperator('(');
      if (bracket) this.next++;
      if (this.isOperator('-')) {
        sign = -1;
        this.next++;
      }
      let size = this.numberHere();
      if (bracket && this.isOperator('/')) {
        this.next++;
        size /= this.numberHere();
      }
      if (bracket) {
        if (!this.isOperator(')'))
          stop({ code: 'malformed', message: 'In the unit, a bracket is not closed.' });
        this.next++;
      }
      return this.checked(sign * size);
    }
    const behindWord = before?.kind === 'word' || (before?.kind === 'operator' && before.text === ')');
    if (!behindWord) return 1;
    // 'mm2', 'min-1': digits straight behind letters.
    if (token?.kind === 'number' && token.tight) {
      this.next++;
      return this.checked(token.value);
    }
    const after = this.peek(1);
    if (this.isOperator('-') && token?.tight && after?.kind === 'number' && after.tight && after.value < 10) {
      this.next += 2;
      return this.checked(-after.value);
    }
    return 1;
  }

  private numberHere(): number {
    const token = this.peek();
    if (token?.kind !== 'number')
      return stop({ code: 'malformed', message: 'In the unit, an exponent is missing behind “^”.' });
    this.next++;
    return token.value;
  }

  private checked(exponent: number): number {
    if (!Number.isFinite(exponent) || exponent === 0 || Math.abs(exponent) > 9)
      stop({ code: 'malformed', message: 'In the unit, an exponent is not between 1 and 9.' });
    return exponent;
  }
}

/** The factors of a unit's text, or what in it was not understood; then `where` names the word. */
export function scanUnit(text: string): Result<readonly Factor[]> {
  try {
    return ok(new Reader(cutUnit(text)).all());
  } catch (error) {
    if (error instanceof Refusal) return refuse(error.problem);
    throw error;
  }
}
