/** A fitting of any kind. */
import * as v from 'valibot';
import { breakerSchema, fuseSchema, relaySchema, switchSchema } from './devices.ts';
import {
  blockSchema,
  busSchema,
  continuationSchema,
  groundSchema,
  passThroughSchema,
  reducerSchema,
} from './joints.ts';
import { amplifierSchema, loadSchema } from './loads.ts';
import {
  alternatorSchema,
  batterySchema,
  capacitorSchema,
  chargerSchema,
  jumpPostSchema,
  takeOffSchema,
} from './sources.ts';

export const fittingSchema = v.variant('kind', [
  batterySchema,
  fuseSchema,
  passThroughSchema,
  blockSchema,
  amplifierSchema,
  groundSchema,
  breakerSchema,
  busSchema,
  reducerSchema,
  loadSchema,
  alternatorSchema,
  jumpPostSchema,
  takeOffSchema,
  chargerSchema,
  relaySchema,
  switchSchema,
  capacitorSchema,
  continuationSchema,
]);
