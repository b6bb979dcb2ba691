/** The chain of an axis, drawn: control → drive → motor → reduction → screw → slide, and what reports back. */

import type { Finding } from '../../engine/assess/finding.ts';
import { PLACES, type PlaceId } from '../../engine/parts/index.ts';
import type { Chain as AxisChain, Place, Refit } from '../../engine/refit/types.ts';
import { MarginRule, sayMargin } from './margin-rule.tsx';
import { sayFactShort } from './short.ts';
import { Sign } from './signs.tsx';

const LINKS: readonly PlaceId[] = ['control', 'drive', 'motor', 'reduction', 'screw', 'slide'];
const BESIDE: readonly PlaceId[] = ['feedback', 'brake', 'duty', 'supply', 'site'];

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

interface Props {
  readonly refit: Refit;
  readonly chain: AxisChain;
  readonly findings: readonly Finding[];
  readonly selected: string | null;
  readonly onSelect: (place: PlaceId) => void;
}

export function Chain({ refit, chain, findings, selected, onSelect }: Props) {
  const link = (place: PlaceId) => (
    <Link
      key={place}
      refit={refit}
      place={place}
      at={chain.places[place] ?? refit.places[place]}
      findings={findings.filter((finding) => finding.place === place)}
      selected={selected === place}
      onSelect={() => onSelect(place)}
    />
  );
  return (
    <section className="sheet" aria-label={`Chain of the ${chain.id} axis`}>
      <ol className="chain">
        {LINKS.map((place) => (
          <li key={place}>{link(place)}</li>
        ))}
      </ol>
      <div className="feedback-line">{BESIDE.map(link)}</div>
    </section>
  );
}

interface LinkProps {
  readonly refit: Refit;
  readonly place: PlaceId;
  readonly at: Place | undefined;
  readonly findings: readonly Finding[];
  readonly selected: boolean;
  readonly onSelect: () => void;
}

function Link({ refit, place, at, findings, selected, onSelect }: LinkProps) {
  const worst = tightest(findings);
  const part = at?.chosen && at.chosen !== 'none' ? refit.parts[at.chosen] : undefined;
  const name = PLACES[place].name;
  const says = part ? sayFactShort(place, part) : at?.chosen === 'none' ? 'none' : 'not known';
  return (
    <button
      type="button"
      className={`link${worst?.verdict === 'fails' ? ' bad-link' : ''}`}
      aria-pressed={selected}
      onClick={onSelect}
    >
      <Sign place={place} />
      <span className="words">
        <span className="name">{name.charAt(0).toUpperCase() + name.slice(1)}</span>
        <br />
        <span className="small soft">{says}</span>
      </span>
      {worst && <MarginRule margin={worst.margin} range={worst.marginRange} verdict={worst.verdict} />}
      <span className="small">
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
}
