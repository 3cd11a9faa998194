import { geoDistance } from 'd3-geo';
import { describe, expect, test } from 'vitest';
import {
  AT_REST,
  centred,
  type Frame,
  frameFor,
  inSight,
  kmPerPx,
  lonLatAt,
  panned,
  placed,
  projectionOf,
  type View,
  zoomed,
} from '../../../../web/area/map/frame.ts';

const [WIDTH, HEIGHT] = [800, 500];

const places = (...list: [lon: number, lat: number][]) => ({
  longitudeDeg: list.map(([lon]) => lon),
  latitudeDeg: list.map(([, lat]) => lat),
});

const REGIONS = {
  'a valley': places([-113.2, 33.1], [-112.9, 33.5], [-113.4, 33.2]),
  'a country': places([-9, 37], [3, 43], [-4, 36]),
  'islands on both sides of the 180th meridian': places([178, -18], [-179, -17], [179.5, -16]),
  'the far south': places([-68, -54], [-70, -53]),
  'far north, round the pole': places([15, 78], [20, 79.5]),
  'one place': places([77.6, 12.97]),
  'the same place twice': places([77.6, 12.97], [77.6, 12.97]),
  'the whole world': places([-160, 60], [-60, -30], [20, 10], [140, -35]),
};

describe.each(Object.entries(REGIONS))('%s', (_, region) => {
  const frame = frameFor(region, WIDTH, HEIGHT);
  const { x, y } = placed(frame, region);

  test('lies within the map, not squeezed into a corner of it', () => {
    x.forEach((px, k) => {
      expect(px).toBeGreaterThanOrEqual(0);
      expect(px).toBeLessThanOrEqual(WIDTH);
      expect(y[k]).toBeGreaterThanOrEqual(0);
      expect(y[k]).toBeLessThanOrEqual(HEIGHT);
    });
    const spread = (at: Float64Array) => Math.max(...at) - Math.min(...at);
    const single = spread(x) === 0 && spread(y) === 0;
    if (single) expect([x[0], y[0]]).toEqual([expect.closeTo(WIDTH / 2, 3), expect.closeTo(HEIGHT / 2, 3)]);
    else if (frame.hasScale) expect(spread(x) > WIDTH * 0.8 || spread(y) > HEIGHT * 0.8).toBe(true);
  });

  test.each<View>([AT_REST, zoomed(frame, AT_REST, 3.7, [120, 90])])('a place of the map and back, at %j', (view) => {
    region.longitudeDeg.forEach((lon, k) => {
      const [px, py] = [(x[k] as number) * view.k + view.x, (y[k] as number) * view.k + view.y];
      const back = lonLatAt(frame, view, [px, py]);
      expect(back).not.toBeNull();
      expect(geoDistance(back as [number, number], [lon, region.latitudeDeg[k] as number])).toBeLessThan(1e-6);
    });
  });

  test('outlines and points move together', () => {
    const view = panned(frame, zoomed(frame, AT_REST, 2.5, [300, 200]), 40, -30);
    const at: [number, number] = [region.longitudeDeg[0] as number, region.latitudeDeg[0] as number];
    const drawn = projectionOf(frame, view).clipExtent(null)(at);
    expect(drawn?.[0]).toBeCloseTo((x[0] as number) * view.k + view.x, 6);
    expect(drawn?.[1]).toBeCloseTo((y[0] as number) * view.k + view.y, 6);
  });
});

test('a kilometre is as long on the map as on the ground', () => {
  const region = REGIONS['a valley'];
  const frame = frameFor(region, WIDTH, HEIGHT);
  const { x, y } = placed(frame, region);
  const px = Math.hypot((x[0] as number) - (x[1] as number), (y[0] as number) - (y[1] as number));
  const km = 6371.0088 * geoDistance([-113.2, 33.1], [-112.9, 33.5]);
  expect((px * kmPerPx(frame, AT_REST)) / km).toBeCloseTo(1, 3);
});

describe('zooming', () => {
  const frame: Frame = frameFor(REGIONS['a country'], WIDTH, HEIGHT);

  test('leaves the place under the finger where it is', () => {
    const view = zoomed(frame, AT_REST, 2, [200, 150]);
    const before = lonLatAt(frame, AT_REST, [200, 150]);
    expect(lonLatAt(frame, view, [200, 150])).toEqual(before?.map((deg) => expect.closeTo(deg, 6)));
  });

  test('ends at its limits, and panning cannot lose the map', () => {
    let near = AT_REST;
    let far = AT_REST;
    for (let k = 0; k < 60; k += 1) {
      near = zoomed(frame, near, 2, [400, 250]);
      far = zoomed(frame, far, 0.5, [0, 0]);
    }
    expect(near.k).toBe(frame.kMost);
    expect(far.k).toBe(frame.kLeast);
    expect(kmPerPx(frame, near)).toBeCloseTo(0.002, 6);
    for (const view of [AT_REST, near, far]) {
      const { k, x, y } = panned(frame, view, 1e7, -1e7);
      expect(x).toBeLessThanOrEqual(WIDTH / 2);
      expect(y + HEIGHT * k).toBeGreaterThanOrEqual(HEIGHT / 2);
    }
  });

  test('a place out of sight is brought to the middle', () => {
    const view = zoomed(frame, AT_REST, 8, [0, 0]);
    expect(inSight(frame, view, [700, 400])).toBe(false);
    const { k, x, y } = centred(frame, view, [700, 400]);
    expect([k, 700 * k + x, 400 * k + y]).toEqual([8, WIDTH / 2, HEIGHT / 2]);
  });

  test('beside the globe there is no place', () => {
    const world = frameFor(null, WIDTH, HEIGHT);
    expect(lonLatAt(world, AT_REST, [2, 2])).toBeNull();
    expect(lonLatAt(world, AT_REST, [WIDTH / 2, HEIGHT / 2])).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
  });
});
