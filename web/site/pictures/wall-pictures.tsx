/** What the sun and the shade do on the chosen wall, in three pictures with their words and figures. */
import type { UnitSystem } from '../../../model/index.ts';
import type { SiteResult } from '../../compute/protocol.ts';
import { useNear } from '../use-near.ts';
import { PlanPicture } from './plan-picture.tsx';
import { RosePicture } from './rose-picture.tsx';
import { SunDiagramPicture } from './sun-diagram-picture.tsx';
import { usePictures } from './use-pictures.ts';

interface WallPicturesProps {
  readonly result: SiteResult;
  readonly units: UnitSystem;
  /** What, when it changes, makes the pictures of this result pointless. */
  readonly input: readonly unknown[];
}

export function WallPictures({ result, units, input }: WallPicturesProps) {
  const { near, ref } = useNear();
  const pictures = usePictures(result, input, near);
  const { view, rose } = pictures;
  const drawn = [view, rose].filter((picture) => picture !== null);
  const old = drawn.some((picture) => picture.result !== result);
  return (
    <section ref={ref} class={old ? 'pictures pictures-old' : 'pictures'} aria-labelledby="pictures-heading">
      <h2 id="pictures-heading">Sun and shade on wall “{view?.plan.wall ?? result.day.wall}”</h2>
      {view && <SunDiagramPicture view={view} units={units} />}
      {view && <PlanPicture view={view} units={units} />}
      <RosePicture pictures={pictures} units={units} />
    </section>
  );
}
