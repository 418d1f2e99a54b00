import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { standing } from '../../src/job/log.ts';
import { currentOf } from '../../src/measure/datum.ts';
import { measure } from '../../src/measure/index.ts';
import { networkOf } from '../../src/measure/network.ts';
import { denseJacobian, denseProblem, invert, normalMatrix } from '../measure/dense.ts';
import { type Made, madeJob, nameOf } from '../measure/networks.ts';

const NETWORKS = 200;
const PLACE_WITHIN_M = 1e-9;
const COVARIANCE_WITHIN = 1e-6;

/** The general-purpose solver of the registry, started at the truth, run until it does not improve. */
function generalSolution(job: Made) {
  const network = networkOf(standing(job.entries), job.holes, [], job.instruments);
  const a = currentOf(network.nodes, 'stake:A').index;
  const b = currentOf(network.nodes, 'stake:B').index;
  const { problem, first } = denseProblem(network, a, b);
  const start = new Array<number>(problem.unknowns).fill(0);
  network.nodes.forEach((node, i) => {
    const truth = job.truth.get(nameOf(node.thing))!;
    if (i !== a) start[first[i]!] = truth.x;
    if (i !== a && i !== b) start[first[i]! + 1] = truth.y;
  });
  const rows = problem.readings.map((_, k) => k);
  const { parameterValues: values } = levenbergMarquardt(
    // In units of each reading's sigma, with weights of 1: its own unequal weights multiply one side of the equations and
    // divide the other (5.1.0).
    { x: rows, y: rows.map((k) => problem.readings[k]! / problem.sigmas[k]!) },
    (parameters) => (k) => problem.predict(parameters, k) / problem.sigmas[k]!,
    {
      initialValues: start,
      gradientDifference: 1e-5,
      centralDifference: true,
      damping: 1,
      maxIterations: 120,
      errorTolerance: 0,
    },
  );
  const covariance = invert(normalMatrix(denseJacobian(problem, values), problem.sigmas));
  return { network, first, values, covariance, a, b };
}

describe('200 random networks against ml-levenberg-marquardt and a dense inverse', () => {
  let compared = 0;
  let greatestPlace = 0;
  let greatestCovariance = 0;
  for (let seed = 1; seed <= NETWORKS; seed++) {
    it(`network ${seed}`, () => {
      const job = madeJob(seed);
      const { network, first, values, covariance, a, b } = generalSolution(job);
      const measured = measure(job.entries, job.holes, job.baseline, job.instruments);
      let worstPlace = 0;
      let worstCovariance = 0;
      network.nodes.forEach((_, i) => {
        if (i === a || i === b) return;
        const { fix } = measured.points[i]!;
        const p = first[i]!;
        const scale = Math.max(covariance[p]![p]!, covariance[p + 1]![p + 1]!);
        worstPlace = Math.max(
          worstPlace,
          Math.hypot(fix!.place.x - values[p]!, fix!.place.y - values[p + 1]!),
        );
        worstCovariance = Math.max(
          worstCovariance,
          Math.abs(fix!.covariance.xx - covariance[p]![p]!) / scale,
          Math.abs(fix!.covariance.xy - covariance[p]![p + 1]!) / scale,
          Math.abs(fix!.covariance.yy - covariance[p + 1]![p + 1]!) / scale,
        );
        compared++;
      });
      greatestPlace = Math.max(greatestPlace, worstPlace);
      greatestCovariance = Math.max(greatestCovariance, worstCovariance);
      expect(worstPlace).toBeLessThan(PLACE_WITHIN_M);
      expect(worstCovariance).toBeLessThan(COVARIANCE_WITHIN);
    });
  }

  it('compared every place', () => {
    expect(compared).toBeGreaterThan(NETWORKS * 7);
    console.info(`largest difference: place ${greatestPlace} m, covariance ${greatestCovariance} relative`);
  });
});
