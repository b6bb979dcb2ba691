/** The wires of a proposal on a terminal: by cable and circuit, in as many columns as there is room for. */
import type { WireGroup } from '../../engine/circuit/whole/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { WiringWire } from '../../engine/refit/types.ts';
import type { Page } from './page.ts';
import { padEnd, plural, widthOf } from './text.ts';

const INDENT = '    ';
/** Beyond this a line is hard to follow. */
const WIDEST = 100;
/** Reasons named; more are only counted. */
const NAMED = 4;

interface How {
  /** Wires that wait for an answer. */
  readonly held: ReadonlySet<string>;
  readonly reasons: Readonly<Record<string, string>>;
  /** One line a wire, with its own reason. */
  readonly all: boolean;
}

export function printProposedWires(page: Page, groups: readonly WireGroup[], how: How): void {
  const count = groups.reduce((sum, { wires }) => sum + wires.length, 0);
  page.heading(`Wires: ${count}`);
  page.prose(
    'Number, and from where to where; * waits for an answer. All get insulated ferrules, except in cables.',
  );
  for (const { title, common, because, wires } of groups) {
    page.line();
    const head = `${title}: ${[plural(wires.length, 'wire'), ...(common ? [common] : [])].join(', ')}`;
    page.prose(page.paint('bold', head));
    if (how.all) printEach(page, wires, common, how);
    else {
      const more = because.slice(NAMED).reduce((sum, each) => sum + each.wires, 0);
      const said = because
        .slice(0, NAMED)
        .map((each) => (because.length === 1 ? each.says : `${each.says} (${each.wires})`));
      if (more > 0) said.push(`for other reasons ${more}; --all says them`);
      if (said.length > 0) page.prose(`${capital(said.join('; '))}.`, INDENT);
      printCells(page, wires, common, how);
    }
  }
}

function printEach(page: Page, wires: readonly WiringWire[], common: string, { held, reasons }: How): void {
  for (const wire of wires) {
    const because = reasons[wire.id];
    page.prose(
      `${cellOf(wire, common, held)}${because === undefined ? '' : `; ${because}`}`,
      INDENT,
      `${INDENT}    `,
    );
  }
}

function printCells(page: Page, wires: readonly WiringWire[], common: string, { held }: How): void {
  const cells = wires.map((wire) => cellOf(wire, common, held));
  const wide = Math.max(...cells.map(widthOf)) + 2;
  const columns = Math.max(1, Math.floor((Math.min(page.width, WIDEST) - INDENT.length + 2) / wide));
  for (let at = 0; at < cells.length; at += columns)
    page.line(
      INDENT +
        cells
          .slice(at, at + columns)
          .map((cell) => padEnd(cell, wide))
          .join(''),
    );
}

/** '*3 G2.plus – T1.DC+ black': what the group has in common is left out. */
function cellOf({ id, from, to, settings }: WiringWire, common: string, held: ReadonlySet<string>): string {
  const shared = new Set(common.split(', '));
  const own = [settings.colour, settings.section].filter((each) => each !== undefined && !shared.has(each));
  return [`${held.has(id) ? '*' : ' '}${settings.number ?? '–'}`, from, '–', to, ...own].join(' ');
}
