/** What the sun and the shade do on the chosen wall, in three pictures with their words and figures. */
import type { UnitSystem } from '../../../model/index.ts';
import type { SiteResult } from '../../compute/protocol.ts';
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
  const pictures = usePictures(result, input);
  const { view } = pictures;
  return (
    <section class="pictures" aria-labelledby="pictures-heading">
      <h2 id="pictures-heading">Sun and shade on wall “{view?.plan.wall ?? result.day.wall}”</h2>
      {view && <SunDiagramPicture view={view} units={units} />}
      {view && <PlanPicture view={view} units={units} />}
      <RosePicture pictures={pictures} units={units} />
    </section>
  );
}
