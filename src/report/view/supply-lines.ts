/** The fuel supply and starting air that the builder stated, in words. */
import type { Brief, FuelSupply } from '../../../shared/engine/brief.ts';
import { count, percent } from '../format/number.ts';
import { both } from '../format/quantity.ts';
import type { Line } from './wanted.ts';

function fuelLines(supply: FuelSupply | null): Line[] {
  if (!supply) return [{ label: 'Fuel supply', value: 'not stated' }];
  if (supply.kind === 'carburettor')
    return [
      { label: 'Fuel supply', value: `carburettor, ${supply.fuel}` },
      {
        label: 'Rated air flow',
        value: `${both(supply.ratedFlow, 'm³/s')} at a depression of ${both(supply.ratingDepression, 'Pa')}`,
      },
      { label: 'Fuel on board', value: both(supply.capacity, 'kg') },
    ];
  if (supply.kind === 'pressure-injection')
    return [
      { label: 'Fuel supply', value: `injection under pressure, ${supply.fuel}` },
      { label: 'Pressure at the nozzle, gauge', value: both(supply.pressure, 'Pa') },
      { label: 'Fuel on board', value: both(supply.capacity, 'kg') },
    ];
  const liquid = supply.kind === 'cylinder-liquid';
  return [
    {
      label: 'Fuel supply',
      value: `${count(supply.cylinders, 'cylinder')} of ${supply.fuel}, ${liquid ? 'liquid drawn through a vaporiser' : 'vapour drawn from the top'}`,
    },
    { label: 'Each cylinder holds', value: `${both(supply.capacity, 'kg')} when full, now ${percent(supply.fill)}` },
    {
      label: 'Regulator, gauge',
      value: supply.regulatorPressure === null ? 'none' : both(supply.regulatorPressure, 'Pa'),
    },
    ...(liquid
      ? [
          {
            label: 'Vaporiser coil',
            value: supply.vaporiserDuty === null ? 'duty not stated' : both(supply.vaporiserDuty, 'W'),
          },
        ]
      : []),
  ];
}

export function supplyLines(brief: Brief): Line[] {
  const { blower, tank } = brief.startingAir;
  return [
    ...fuelLines(brief.supply),
    {
      label: 'Starting air, blower',
      value: blower ? `${both(blower.flow, 'm³/s')} at ${both(blower.pressure, 'Pa')} gauge` : 'none',
    },
    {
      label: 'Starting air, tank',
      value: tank
        ? `${both(tank.volume, 'm³')} at ${both(tank.pressure, 'Pa')} gauge, compressor gives ${both(tank.delivery, 'm³/s')} of free air`
        : 'none',
    },
  ];
}
