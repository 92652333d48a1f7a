import type { Aircraft } from '../document/types';
import { powerProblems } from '../power/powerProblems';
import { compareSeverity, type Finding, type Judgement } from './types';

/**
 * The judgement with what is wrong with the wiring. Apart from the balance, for no place mends a wiring: what is offered
 * for the balance is judged without it. One that has it already stays.
 */
export function withPower(aircraft: Aircraft, judgement: Judgement): Judgement {
  if (judgement.findings.some(({ kind }) => kind === 'power')) return judgement;
  const problems = (powerProblems(aircraft) ?? []).filter(({ severity }) => severity !== 'unknown');
  const [worst] = problems;
  if (!worst) return judgement;
  const finding: Finding = { kind: 'power', severity: worst.severity, problems };
  const findings = [...judgement.findings, finding].sort((a, b) => compareSeverity(a.severity, b.severity));
  const worse = (severity: Judgement['severity']) =>
    compareSeverity(worst.severity, severity) < 0 ? worst.severity : severity;
  return {
    ...judgement,
    findings,
    severity: worse(judgement.severity),
    severitySoFar: worse(judgement.severitySoFar),
  };
}
