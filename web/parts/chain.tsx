/** A chain, drawn: control → drive → motor → … → slide, or mains → drive → motor → belts → spindle → chuck, and what reports back. */

import { type CSSProperties, memo } from 'react';
import type { Finding } from '../../engine/assess/finding.ts';
import { sayChain } from '../../engine/assess/words.ts';
import { PLACES, type PlaceId } from '../../engine/parts/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Chain as AnyChain, Part, Place, Refit } from '../../engine/refit/types.ts';
import { MarginRule, sayMargin } from './margin-rule.tsx';
import { sayFactShort } from './short.ts';
import { Sign } from './signs.tsx';

const LINKS: Readonly<Record<AnyChain['kind'], readonly PlaceId[]>> = {
  axis: ['control', 'drive', 'motor', 'reduction', 'screw', 'slide'],
  spindle: ['site', 'spindle-drive', 'spindle-motor', 'belts', 'spindle', 'chuck'],
};
const BESIDE: Readonly<Record<AnyChain['kind'], readonly PlaceId[]>> = {
  axis: ['feedback', 'brake', 'duty', 'supply', 'site'],
  spindle: ['spindle-feedback', 'spindle-duty', 'control'],
};

/** The finding that stands nearest to failing at a link; unknown only when nothing is known there. */
export function tightest(findings: readonly Finding[]): Finding | undefined {
  const rank = (finding: Finding): number =>
    finding.verdict === 'fails'
      ? (finding.margin ?? 0)
      : finding.verdict === 'unknown'
        ? 1e9
        : (finding.margin ?? 1e6);
  return findings.reduce<Finding | undefined>(
    (best, finding) => (!best || rank(finding) < rank(best) ? finding : best),
    undefined,
  );
}

/** Checks of an axis that ask its drive whether it bears what the supply gives: answers about the supply as well. */
const ABOUT_THE_BUS: ReadonlySet<string> = new Set(['bus-high', 'bus-low', 'regeneration']);

/** What the part in a place decides. */
export const findingsAt = (findings: readonly Finding[], place: PlaceId): readonly Finding[] =>
  findings.filter(
    (finding) => finding.place === place || (place === 'supply' && ABOUT_THE_BUS.has(finding.check)),
  );

/** Where a signal leaves the chain of an axis and where it comes back, as numbers of its links. */
function wayBack(refit: Refit, { kind, places }: AnyChain): { from: number; to: number } | undefined {
  const feedback = partOf(refit, places.feedback);
  if (kind !== 'axis' || !feedback) return undefined;
  const picked = (part: Part | undefined, name: string): string | undefined => {
    const value = part?.facts[name]?.value;
    return value?.kind === 'choice' ? value.option : undefined;
  };
  const source: PlaceId =
    picked(feedback, 'type') === 'scale' ? 'slide' : picked(feedback, 'on') === 'screw' ? 'screw' : 'motor';
  const reader: PlaceId = picked(partOf(refit, places.drive), 'command') === 'volts' ? 'control' : 'drive';
  return { from: LINKS.axis.indexOf(source), to: LINKS.axis.indexOf(reader) };
}

interface Props {
  readonly refit: Refit;
  readonly chain: AnyChain;
  /** Its own, and those of the whole machine. */
  readonly findings: readonly Finding[];
  readonly selected: string | null;
  readonly onSelect: (place: PlaceId) => void;
}

export function Chain({ refit, chain, findings, selected, onSelect }: Props) {
  const link = (place: PlaceId) => (
    <Link
      key={place}
      place={place}
      at={chain.places[place] ?? refit.places[place]}
      part={partOf(refit, chain.places[place] ?? refit.places[place])}
      worst={tightest(findingsAt(findings, place))}
      selected={selected === place}
      onSelect={onSelect}
    />
  );
  const back = wayBack(refit, chain);
  return (
    <section className="sheet" aria-label={`Chain of the ${sayChain(chain)}`}>
      <ol className="chain">
        {LINKS[chain.kind].map((place) => (
          <li key={place}>{link(place)}</li>
        ))}
      </ol>
      {back && (
        <div
          className={`chain-return${back.from - back.to > 1 ? ' far' : ''}`}
          style={{ '--from': back.from, '--to': back.to } as CSSProperties}
        >
          {link('feedback')}
        </div>
      )}
      <div className="feedback-line">
        {BESIDE[chain.kind].filter((place) => !back || place !== 'feedback').map(link)}
      </div>
    </section>
  );
}

const partOf = (refit: Refit, at: Place | undefined): Part | undefined =>
  at?.chosen && at.chosen !== 'none' ? refit.parts[at.chosen] : undefined;

interface LinkProps {
  readonly place: PlaceId;
  readonly at: Place | undefined;
  readonly part: Part | undefined;
  readonly worst: Finding | undefined;
  readonly selected: boolean;
  readonly onSelect: (place: PlaceId) => void;
}

const Link = memo(function Link({ place, at, part, worst, selected, onSelect }: LinkProps) {
  const name = PLACES[place].name;
  const says = part ? sayFactShort(place, part) : at?.chosen === 'none' ? 'none' : 'not known';
  return (
    <button
      type="button"
      className={`link${worst?.verdict === 'fails' ? ' bad-link' : ''}`}
      aria-pressed={selected}
      onClick={() => onSelect(place)}
    >
      <Sign place={place} />
      <span className="words">
        <span className="name">{capital(name)}</span>
        <br />
        <span className="small soft">{says}</span>
      </span>
      {worst && <MarginRule margin={worst.margin} range={worst.marginRange} verdict={worst.verdict} />}
      <span className="small says">
        {worst ? (
          <span className={`verdict ${worst.verdict}`}>{sayMargin(worst)}</span>
        ) : (
          <span className="soft">no question</span>
        )}
        {worst && (
          <span className="hidden">
            , {worst.title}: {worst.verdict}
          </span>
        )}
      </span>
    </button>
  );
});
