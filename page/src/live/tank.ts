// The tank as it is drawn.

/// The share of the tank that is water, by the pressure in it, at constant temperature.
export function waterShare(tee_pa: number, precharge_pa: number): number {
  const atmosphere_pa = 101325;
  return tee_pa <= precharge_pa ? 0 : 1 - (precharge_pa + atmosphere_pa) / (tee_pa + atmosphere_pa);
}
