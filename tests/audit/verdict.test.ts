import { expect, test } from 'vitest';
import { verdictOf } from './verdict.mjs';

const answer = (counts: object, vulnerabilities = {}) =>
  JSON.stringify({ auditReportVersion: 2, vulnerabilities, metadata: { vulnerabilities: counts } });

test('a serious weakness fails, a small one does not', () => {
  const serious = { odd: { name: 'odd', severity: 'high', range: '<2.0.0' } };
  const found = verdictOf(answer({ info: 0, low: 1, moderate: 0, high: 1, critical: 0, total: 2 }, serious));
  expect(found.failed).toBe(true);
  expect(found.lines).toEqual(['Known weaknesses: critical 0, high 1, moderate 0, low 1, info 0', 'high: odd <2.0.0']);
  expect(verdictOf(answer({ low: 3, moderate: 2 })).failed).toBe(false);
});

test.each(['', 'no json', '{}', '{"error":{"code":"ENOTFOUND","summary":"request to a registry failed"}}', 'null'])(
  '%s is no answer: nothing fails, and it is said',
  (text) => {
    const { lines, failed } = verdictOf(text);
    expect(failed).toBe(false);
    expect(lines.join()).toMatch(/could not be asked/);
    expect(lines.join()).not.toContain('registry failed');
  },
);
