/**
 * What the fields of a line are called where people fill them in, so that a check which lacks one names it as the form
 * does. Fields that no check asks for have their label in the form alone.
 */
export const fieldLabels = {
  service: 'What the line does',
  ethanol_percent: 'Share of ethanol, %',
  pressure_bar: 'Working pressure, bar',
  temp_max_C: 'Hottest fluid, °C',
  vacuum_bar: 'Vacuum, bar',
  ambient_max_C: 'Hottest air around it, °C',
  flow_l_min: 'Flow, L/min',
  in_tank: 'Inside a tank',
  add_on_cooler: 'To a cooler that was added on',
  bore: 'Bore, mm',
  hose_vacuum_bar: 'Holds a vacuum of, bar',
  hose_max_C: 'Hottest, °C',
  hose_class: 'Class printed on it',
  tube_material: 'Material inside',
  hot_factor: 'Share of the rating left when hot',
  clock_deg: 'Far end against near end, °',
  'drain.housing_hole_mm': 'Drain hole of the housing, mm',
  'drain.outlet_angle_deg': 'Outlet off straight down, °',
  'drain.min_slope_deg': 'Flattest piece falls by, °',
  'drain.entry_above_oil_mm': 'Enters above the running oil level by, mm',
} as const;

/** The label of a field in quotes, for a sentence. */
export const named = (field: keyof typeof fieldLabels): string => `“${fieldLabels[field]}”`;
