/** A box from the side, true to scale: the wall to the left, eave and screen, the sun's way, and how far shade reaches. */
import type { PlayedDay, SunPosition } from '../../../model/index.ts';
import type { Point } from '../../site/pictures/plane.ts';
import { useSize } from '../use-size.ts';
import { faceLook, isLit, type SceneProps } from './scene.ts';
import { FaceWatts, SunDisc, SunRay, SunWay } from './scene-parts.tsx';
import { shadeBelowM, sunFromSide } from './sun-dome.ts';

/** What is seen above the box or its eave, m. */
const ABOVE_M = 0.5;
/** Share of the width that the building takes. */
const BUILDING = 0.3;

export function SideScene({ played, step, classes, description }: SceneProps) {
  const { ref, size } = useSize();
  const { fontPx } = size;
  const width = Math.min(size.widthPx, fontPx * 20);
  const height = width;
  const { box } = played.site;
  const { wall, suns } = played;
  const boxTopM = box.mountHeightM + box.heightM / 2;
  const eave = wall.eave !== null && wall.eave.depthM > 0 ? wall.eave : null;
  const topM = boxTopM + (eave?.heightAboveBoxM ?? 0.6) + ABOVE_M;
  const groundY = height - fontPx * 1.2;
  const scale = groundY / topM;
  const wallX = width * BUILDING;
  const at = (outM: number, upM: number): Point => [wallX + outM * scale, groundY - upM * scale];
  const backM = box.mount === 'post' ? box.postDistanceM : box.standOffM;
  const middle = at(backM + box.depthM / 2, box.mountHeightM);
  const radius = Math.min(middle[1], width - middle[0]) - fontPx;
  const place = (one: SunPosition): Point => {
    const [x, y] = sunFromSide(one, wall.azimuthDeg, radius);
    return [middle[0] + x, middle[1] + y];
  };
  const sun = suns[step];
  const [x, y] = at(backM, boxTopM);
  return (
    <div ref={ref} class="scene">
      <svg
        role="img"
        aria-label={description}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        font-size={fontPx}
      >
        <path class="building" d={`M0 0H${wallX}V${groundY}H0Z`} />
        <path class="wall-face" d={`M${wallX} 0V${groundY}`} />
        <path class="soil" d={`M0 ${groundY}H${width}`} />
        <SunWay suns={suns} place={place} />
        {sun && eave && <ShadeOfEave played={played} sun={sun} at={at} boxTopM={boxTopM} />}
        {eave && (
          <path class="eave" d={`M${at(0, boxTopM + eave.heightAboveBoxM).join(' ')}H${at(eave.depthM, 0)[0]}`} />
        )}
        {wall.obstructions.map((obstruction) =>
          obstruction.kind === 'front' ? (
            <path
              key={obstruction.distanceM}
              class="screen"
              d={`M${at(obstruction.distanceM, 0).join(' ')}V${at(0, obstruction.heightM)[1]}`}
            />
          ) : null,
        )}
        {sun && <SunRay from={place(sun)} to={middle} shortPx={fontPx * 0.9} sun={sun} lit={isLit(played, step)} />}
        <SideOfBox
          played={played}
          step={step}
          classes={classes}
          x={x}
          y={y}
          width={box.depthM * scale}
          height={box.heightM * scale}
          band={fontPx * 0.4}
        />
        <FaceWatts
          played={played}
          step={step}
          fontPx={fontPx}
          places={{
            front: [at(backM + box.depthM, 0)[0] + fontPx * 2.4, middle[1] + fontPx * 0.7],
            top: [middle[0] + fontPx * 0.6, y - fontPx * 1.2],
          }}
        />
        {sun && <SunDisc at={place(sun)} up={sun.elevationDeg > 0} fontPx={fontPx} />}
      </svg>
    </div>
  );
}

interface SideOfBoxProps extends Pick<SceneProps, 'played' | 'step' | 'classes'> {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly band: number;
}

/** Seen from its left side, as somebody says who faces the wall. */
function SideOfBox({ played, step, classes, x, y, width, height, band }: SideOfBoxProps) {
  const look = faceLook(played, step, classes);
  return (
    <g class="scene-box">
      <rect class={look('left')} x={x} y={y} width={width} height={height} />
      <rect class={look('front')} x={x + width} y={y} width={band} height={height} />
      <rect class={look('top')} x={x} y={y - band} width={width} height={band} />
      <rect class={look('bottom')} x={x} y={y + height} width={width} height={band} />
    </g>
  );
}

interface ShadeOfEaveProps {
  readonly played: PlayedDay;
  readonly sun: SunPosition;
  readonly boxTopM: number;
  at(outM: number, upM: number): Point;
}

/** The part of the wall that the eave keeps the sun off, as seen in this section. */
function ShadeOfEave({ played, sun, at, boxTopM }: ShadeOfEaveProps) {
  const { eave, azimuthDeg } = played.wall;
  if (eave === null || sun.elevationDeg <= 0) return null;
  const below = shadeBelowM(sunFromSide(sun, azimuthDeg, 1), eave.depthM);
  if (below === null) return null;
  const eaveM = boxTopM + eave.heightAboveBoxM;
  const footM = Math.max(0, eaveM - below);
  // Where the line meets the ground before the wall, it ends there.
  const footOutM = below > eaveM ? eave.depthM * (1 - eaveM / below) : 0;
  const [fromX, fromY] = at(eave.depthM, eaveM);
  return (
    <g class="eave-shade">
      <path class="shaded-wall" d={`M${at(0, eaveM).join(' ')}V${at(0, footM)[1]}`} />
      <path class="shade-edge" d={`M${fromX} ${fromY}L${at(footOutM, footM).join(' ')}`} />
    </g>
  );
}
