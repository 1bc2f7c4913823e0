import { useState } from 'preact/hooks';
import { earned, percent, short } from '../../core/index.ts';
import { fieldPointMm, pointAt } from '../state/field-point.ts';
import { numberTyped } from '../state/json.ts';
import { Handle } from './handle.tsx';
import type { SensorScene } from './sensor-geometry.ts';
import type { View } from './sensor-marks.tsx';

const STEP_MM = 0.5;
const LEAP_MM = 2;
const GRAIN_MM = 0.01;

/** The point of the picture whose beam is drawn: pricked into the diagonal toward the upper right, and moved along it. */
export function FieldPoint({ scene, view: { cx, cy, k } }: { scene: SensorScene; view: View }) {
  const corner = Math.hypot(scene.width, scene.height) / 2;
  const radius = fieldPointMm.value;
  const light = scene.light?.(radius);
  const place = radius === 0 ? 'the middle' : `${short(radius)} mm from the middle`;
  return (
    <Handle
      class="field-point"
      moved={{
        name: 'field on the sensor',
        label: 'The point whose beam is drawn',
        unit: 'mm',
        value: radius,
        least: 0,
        greatest: corner,
        step: STEP_MM,
        leap: LEAP_MM,
        along: 'height',
        set: pointAt,
        told: light === undefined ? place : `${place}: ${percent(light)} of the light`,
      }}
      x={cx + ((radius * scene.width) / corner / 2) * k}
      y={cy - ((radius * scene.height) / corner / 2) * k}
      follow={(x, y) => Math.hypot(x - cx, y - cy) / k}
      grain={GRAIN_MM}
    >
      <svg viewBox="-14 -14 28 28" width="28" height="28" aria-hidden="true">
        <path class="halo" d={CROSS} />
        <circle class="halo" r="5" />
        <path d={CROSS} />
        <circle r="5" />
        <circle class="prick" r="1.1" />
      </svg>
    </Handle>
  );
}

const CROSS = 'M-12.5 0H-5M5 0H12.5M0 -12.5V-5M0 5V12.5';

/** The same point as a number. */
export function FieldInput() {
  const [typing, setTyping] = useState<string | undefined>(undefined);
  const radius = fieldPointMm.value;
  return (
    <p class="field-input">
      <label for="field-point">Beam drawn to</label>
      <input
        id="field-point"
        type="text"
        inputMode="decimal"
        autocomplete="off"
        maxLength={20}
        value={typing ?? earned(radius, radius - 0.01, radius + 0.01)}
        onInput={({ currentTarget }) => {
          setTyping(currentTarget.value);
          const value = numberTyped(currentTarget.value);
          if (typeof value === 'number') pointAt(value);
        }}
        onBlur={() => setTyping(undefined)}
      />
      <span>mm from the middle</span>
    </p>
  );
}
