/** Where the pulses go: one link after the other, each with its margin. Beside each other where there is room, else downwards. */
import type { FlowPicture, FlowStep } from '../../engine/assess/pictures/index.ts';
import { MarginRule, sayMargin } from '../parts/margin-rule.tsx';
import { WORD } from '../parts/verdict.tsx';
import { amount } from './words.ts';

function says({ asked, there, unit }: FlowStep): string {
  if (asked === null || there === null) return 'not known yet';
  return `asked ${amount(asked, unit)}, there ${amount(there, unit)}`;
}

interface Props {
  readonly picture: FlowPicture;
  readonly onSelectFinding: (id: string) => void;
}

export function Flow({ picture, onSelectFinding }: Props) {
  return (
    <ol className="flow-steps">
      {picture.steps.map((step) => (
        <li key={step.finding}>
          <button type="button" onClick={() => onSelectFinding(step.finding)}>
            <span className="at">
              <strong>{step.at}</strong> <span>{step.name}</span>
            </span>
            <MarginRule margin={step.margin} range={step.range} verdict={step.verdict} />
            <span className={`verdict ${step.verdict}`}>
              {step.margin === null && step.verdict !== 'unknown' ? WORD[step.verdict] : sayMargin(step)}
              <span className="hidden">: {WORD[step.verdict]}</span>
            </span>
            <span className="small soft says">
              {says(step)}
              {step.detail && <span className="detail">{step.detail}</span>}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}
