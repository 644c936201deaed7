import { z } from 'zod';
import type { ProjectSettings } from '../../planning/project-input.ts';
import { choice } from './value-schemas.ts';

/** Settings of the air check, each as it may be given, in a document and over HTTP. */

/** Larger than any shop, m. */
const room = z.number().positive().max(1000).nullable();

export const airSettingShapes = {
  roomLengthM: room,
  roomWidthM: room,
  roomHeightM: room,
  airKind: choice<ProjectSettings['airKind']>('fan', 'air-changes', 'opening'),
  fanM3PerHour: z.number().min(0).max(1_000_000).nullable(),
  fanDerating: z.number().min(0.05).max(1),
  airChangesPerHour: z.number().min(0).max(1000).nullable(),
  openingM2: z.number().min(0).max(1000).nullable(),
  windMPerS: z.number().min(0).max(50),
  mixingFactor: z.number().min(1).max(10),
  outdoorC: z.number().min(-60).max(60).nullable(),
  heatPricePerKwhMinor: z.number().min(0).max(1_000_000).nullable(),
  healthBasis: choice<ProjectSettings['healthBasis']>('peak', 'averages'),
};
