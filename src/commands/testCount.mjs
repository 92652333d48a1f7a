/**
 * Adds up a vitest JSON report. A test file that breaks before any of its tests ran counts as one
 * failure, and so does a run that ended badly without a failing test to show for it.
 * @param {{ numPassedTests: number, numFailedTests: number,
 *   testResults: { status: string, assertionResults: { status: string }[] }[] } | null} report
 *   null if vitest wrote none
 * @param {number | null} exitStatus vitest's own
 * @returns {{ passed: number, failed: number }}
 */
export function countTests(report, exitStatus) {
  if (!report) return { passed: 0, failed: 1 };
  const broken = report.testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((result) => result.status === 'failed'),
  ).length;
  const failed = report.numFailedTests + broken;
  const endedBadly = exitStatus !== 0 && failed === 0;
  const nothingRan = report.numPassedTests === 0 && failed === 0;
  return { passed: report.numPassedTests, failed: endedBadly || nothingRan ? 1 : failed };
}
