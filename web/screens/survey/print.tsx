/** The survey as sheets of paper, as they will be printed. */
import { createElement, type ReactNode, useEffect } from 'react';
import { Link } from 'wouter';
import { type Node, SHEET_STYLE, surveySheets } from '../../../engine/refit/sheets/index.ts';
import { usePerson } from '../../state/person.ts';
import type { Session, View } from '../../state/session.ts';
import './survey.css';

export default function SurveyPrint({ session, view }: { session: Session; view: View }) {
  const { system } = usePerson();
  useEffect(() => {
    // The page's policy allows no style but files of our own and what our own script makes.
    const style = new CSSStyleSheet();
    style.replaceSync(SHEET_STYLE);
    document.adoptedStyleSheets.push(style);
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== style);
    };
  }, []);
  return (
    <div className="survey-print stack">
      <div className="not-printed row">
        <Link href={`/refit/${session.id}/survey`} className="button">
          Back to the survey
        </Link>
        <button type="button" className="main" onClick={() => print()}>
          Print, or save as PDF
        </button>
        <p className="soft">A4. What is known already stands small in its box.</p>
      </div>
      <div className="survey-paper">{drawn(surveySheets(view.refit, system))}</div>
    </div>
  );
}

function drawn(node: Node): ReactNode {
  if (typeof node === 'string') return node;
  const { class: className, ...attributes } = node.attributes;
  return createElement(
    node.tag,
    { ...attributes, ...(className === undefined ? {} : { className }) },
    ...node.children.map(drawn),
  );
}
