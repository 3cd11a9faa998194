/** Level plates seen from either side; the worked examples of textbooks stand in checks/convection.ts. */
import { expect, test } from 'vitest';
import { airFrom } from '../../model/thermal/air.ts';
import { plateFacingDown, plateFacingUp } from '../../model/thermal/natural-convection.ts';

test('air facing a level plate from either side: warm above is stable, warm below is not', () => {
  const gas = airFrom({
    conductivityWmK: 0.027,
    kinematicViscosityM2s: 1.7e-5,
    thermalDiffusivityM2s: 2.4e-5,
    expansionPerK: 0.0032,
  });
  expect(plateFacingUp(0.05)(gas, 330, 310)).toBeGreaterThan(plateFacingUp(0.05)(gas, 290, 310));
  expect(plateFacingDown(0.05)(gas, 290, 310)).toBeGreaterThan(plateFacingDown(0.05)(gas, 330, 310));
  expect(plateFacingUp(0.05)(gas, 330, 310)).toBe(plateFacingDown(0.05)(gas, 290, 310));
});
