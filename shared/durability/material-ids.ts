/** Sheet for rolled shells, by standard designation. */
export const SHEET_MATERIAL_IDS = [
  'low-carbon-steel',
  '304',
  '321',
  '310',
  'N06625',
  'titanium-grade-2',
  'titanium-grade-5',
] as const;
export type SheetMaterialId = (typeof SHEET_MATERIAL_IDS)[number];

/** Strip for reeds and bar for poppets, by standard designation. */
export const VALVE_MATERIAL_IDS = [
  'AISI-1095',
  'AISI-301-full-hard',
  'AISI-420',
  'Ti-6Al-4V',
  'valve-steel-21-4N',
  'valve-steel-X45CrSi9-3',
] as const;
export type ValveMaterialId = (typeof VALVE_MATERIAL_IDS)[number];
