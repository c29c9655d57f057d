import { useAsk } from '../ui/use-ask.ts';

/** A car to be chosen. */
export interface AnyCar {
  readonly id: string;
  readonly name: string;
  readonly left: boolean;
}

/** The cars here and after them those that left; null while they are asked for. */
export function useAllCars(): readonly AnyCar[] | null {
  const [here, gone] = [useAsk('yard.show', {}), useAsk('car.left', {})];
  if (here.state !== 'answered' || gone.state !== 'answered') return null;
  return [
    ...here.value.lanes.map(({ id, name }) => ({ id, name, left: false })),
    ...gone.value.cars.map(({ car }) => ({ id: car.id, name: car.name, left: true })),
  ];
}
