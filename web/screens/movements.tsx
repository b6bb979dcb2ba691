/** The pages of a refit in the order of the job: what is known, whether it fits, how it is built. A new page adds one line. */
import { type RefObject, useEffect, useRef } from 'react';
import { Link } from 'wouter';

interface Page {
  /** First step of its address after the refit. */
  readonly at: string;
  readonly name: string;
  /** What follows in the address where the page is one of several alike: an axis. */
  readonly of?: 'axis' | 'subject';
}

interface Movement {
  readonly name: string;
  readonly pages: readonly Page[];
}

const MOVEMENTS: readonly Movement[] = [
  {
    name: 'Know',
    pages: [
      { at: 'know', name: 'What is known' },
      { at: 'survey', name: 'Survey' },
      { at: 'evidence', name: 'Bench tests' },
      { at: 'keep', name: 'Keep or replace' },
      { at: 'worth', name: 'Worth it?' },
      { at: 'fault', name: 'Dead or asleep?' },
    ],
  },
  {
    name: 'Fit',
    pages: [
      { at: 'fit', name: 'Does it fit?', of: 'subject' },
      { at: 'move', name: 'Move', of: 'axis' },
      { at: 'work', name: 'Work' },
      { at: 'control', name: 'Control' },
      { at: 'auxiliaries', name: 'Auxiliaries' },
    ],
  },
  {
    name: 'Build',
    pages: [
      { at: 'wiring', name: 'Wiring' },
      { at: 'stop', name: 'Stop' },
    ],
  },
];

/** Beside the job: what the verdicts rest on by habit, and what was changed when. */
const ASIDE: readonly Page[] = [
  { at: 'habits', name: 'Habits' },
  { at: 'history', name: 'History' },
];

interface Where {
  /** '/refit/lathe' */
  readonly home: string;
  /** The address now. */
  readonly place: string;
  /** Axes of the refit. */
  readonly axes: readonly string[];
}

const isAt = ({ home, place }: Where, { at }: Page): boolean =>
  place === `${home}/${at}` || place.startsWith(`${home}/${at}/`);

function hrefOf({ home, axes }: Where, { at, of }: Page): string {
  if (of === undefined) return `${home}/${at}`;
  return `${home}/${at}/${axes[0] ?? (of === 'subject' ? 'machine' : '')}`;
}

/** On a phone tabs stand in one row that scrolls: the page we are on is brought into it. */
function useCurrentInView(place: string): RefObject<HTMLElement | null> {
  const nav = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another address makes another tab current
  useEffect(() => {
    const row = nav.current;
    const tab = row?.querySelector<HTMLElement>('[aria-current]');
    if (row && tab) row.scrollLeft = tab.offsetLeft - (row.clientWidth - tab.offsetWidth) / 2;
  }, [place]);
  return nav;
}

/** The movements, in the head of every page. */
export function Movements(where: Where) {
  const nav = useCurrentInView(where.place);
  return (
    <nav ref={nav} aria-label="Pages of this refit">
      {MOVEMENTS.map(({ name, pages }) => (
        <Link
          key={name}
          href={hrefOf(where, pages[0]!)}
          aria-current={pages.some((page) => isAt(where, page)) ? 'true' : undefined}
        >
          {name}
        </Link>
      ))}
      {ASIDE.map((page) => (
        <Link
          key={page.at}
          href={hrefOf(where, page)}
          aria-current={isAt(where, page) ? 'page' : undefined}
          className="aside"
        >
          {page.name}
        </Link>
      ))}
    </nav>
  );
}

/** The pages of the movement we are in. */
export function PagesOfMovement(where: Where) {
  const nav = useCurrentInView(where.place);
  const movement = MOVEMENTS.find(({ pages }) => pages.some((page) => isAt(where, page)));
  if (!movement || movement.pages.length < 2) return null;
  return (
    <nav ref={nav} aria-label={`Pages of ${movement.name}`} className="pages">
      {movement.pages.map((page) => (
        <Link key={page.at} href={hrefOf(where, page)} aria-current={isAt(where, page) ? 'page' : undefined}>
          {page.name}
        </Link>
      ))}
    </nav>
  );
}
