import { useEffect, useState } from 'preact/hooks';

/** A value one frame late: what is drawn from it lets the verdict be drawn first. */
export function useLater<Value>(value: Value): Value {
  const [later, setLater] = useState(value);
  // Effects run after the paint.
  useEffect(() => setLater(value), [value]);
  return later;
}
