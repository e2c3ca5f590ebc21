/** A price list as an invented shop keeps it in a spreadsheet: six frames, legs and braces, what joins them, forty extras, services. */
const EXTRAS = [
  ['BENCH-4', 'Bench, 4 ft, with back', '$312.00', '20 x 48 x 34 in', '52'],
  ['BENCH-6', 'Bench, 6 ft, with back', '$389.00', '20 x 72 x 34 in', '71'],
  ['LAD-3', 'Swim ladder, 3 step', '$219.00', '', '16.5'],
  ['LAD-4', 'Swim ladder, 4 step', '$249.00', '', ''],
  ['LAD-5', 'Swim ladder, 5 step, wide', '$329.50', '', ''],
  ['CLT-6', 'Mooring cleat 6 in', '$14.00', '2 x 6 x 2 in', '1.1'],
  ['CLT-8', 'Mooring cleat 8 in', '$19.00', '2 x 8 x 2 1/2 in', '1.6'],
  ['CLT-10', 'Mooring cleat 10 in', '$27.00', '2.5 x 10 x 3 in', '2.4'],
  ['BMP-18', 'Dock bumper 18 in', '$34.00', '3 x 18 x 4 in', '3.1'],
  ['BMP-36', 'Dock bumper 36 in', '$58.00', '3 x 36 x 4 in', '6.0'],
  ['BMP-C', 'Corner bumper', '$41.00', '', ''],
  ['WHL-1', 'Launching wheel', '$96.00', '6 x 16 x 16 in', '9'],
  ['RING', 'Mooring ring', '$11.50', '1/2 x 4 x 4 in', '0.8'],
  ['LGT-S', 'Solar light', '$24.95', '4 x 4 x 3 in', '0.9'],
  ['LGT-P', 'Solar light on a post', '$79.00', '4 x 4 x 36 in', '5'],
  ['FLAG', 'Flag holder', '$18.00', '2 x 2 x 10 in', '1'],
  ['ROD-1', 'Rod holder, single', '$22.00', '3 x 3 x 9 in', '1.2'],
  ['ROD-3', 'Rod holder, triple', '$54.00', '4 x 18 x 9 in', '3.5'],
  ['KAY-1', 'Kayak rack, one boat', '$265.00', '24 x 40 x 36 in', '38'],
  ['KAY-2', 'Kayak rack, two boats', '$415.00', '24 x 40 x 60 in', '61'],
  ['PAD-B', 'Paddle hooks', '$31.00', '4 x 12 x 6 in', '2'],
  ['TBL', 'Side table', '$88.00', '16 x 20 x 18 in', '14'],
  ['BOX-4', 'Storage box, 4 ft', '$298.00', '24 x 48 x 22 in', '64'],
  ['BOX-6', 'Storage box, 6 ft', '$372.00', '24 x 72 x 22 in', '88'],
  ['RAIL-4', 'Hand rail, 4 ft', '$142.00', '2 x 48 x 36 in', '17'],
  ['RAIL-8', 'Hand rail, 8 ft', '$236.00', '2 x 96 x 36 in', '31'],
  ['STEP', 'Boat step', '$118.00', '16 x 24 x 12 in', '19'],
  ['GATE', 'Gate', '$189.00', '2 x 40 x 36 in', '22'],
  ['HOSE', 'Hose reel', '$67.00', '12 x 14 x 16 in', '8'],
  ['TRSH', 'Litter bin', '$49.00', '14 x 14 x 24 in', '7'],
  ['UMB', 'Umbrella stand', '$72.00', '12 x 12 x 14 in', '21'],
  ['CHR', 'Folding chair bracket', '$36.00', '4 x 16 x 6 in', '2.6'],
  ['SIGN', 'Number sign', '$28.00', '1/4 x 10 x 6 in', '0.7'],
  ['THRM', 'Water thermometer', '$19.00', '2 x 2 x 12 in', '0.5'],
  ['SLD', 'Water slide', '$1,480.00', '30 x 96 x 60 in', '118'],
  ['MAT', 'Anti-slip mat, 2 x 4 ft', '$44.00', '24 x 48 x 1/4 in', '6'],
  ['NET', 'Landing net holder', '$16.00', '3 x 3 x 8 in', '0.8'],
  ['FISH', 'Fillet table', '$154.00', '18 x 36 x 34 in', '26'],
  ['LINE', 'Dock line holder', '$12.00', '3 x 6 x 6 in', '0.9'],
  ['RNGB', 'Ring buoy with bracket', '$129.00', '6 x 30 x 30 in', '7.5'],
] as const

const OTHERS = [
  ['Frames', '', '', '', ''],
  ['F-48', 'Dock section 4 x 8 ft', '$412.00', '', ''],
  ['F-410', 'Dock section 4 x 10 ft', '$498.00', '', '112'],
  ['F-58', 'Dock section 5 x 8 ft', '$459.00', '', ''],
  ['F-510', 'Dock section 5 x 10 ft', '$551.00', '', ''],
  ['F-68', 'Dock section 6 x 8 ft', '$528.00', '', ''],
  ['F-610', 'Dock section 6 x 10 ft', '$629.00', '', ''],
  ['Legs and bracing', '', '', '', ''],
  ['L-4', 'Leg 4 ft', '$79.00', '', ''],
  ['L-5', 'Leg 5 ft', '$92.50', '', ''],
  ['L-6', 'Leg 6 ft', '$106.00', '', ''],
  ['L-8', 'Leg 8 ft', '$133.00', '', ''],
  ['FP-1', 'Foot pad', '$24.00', '', ''],
  ['HB-2', 'Hook bracket', '$19.40', '', '1.5'],
  ['B-12', 'Set bolt 1/2 in', '$2.10', '', ''],
  ['Options', '', '', '', ''],
] as const

const SERVICES = [
  ['Services', '', '', '', ''],
  ['DLV', 'Delivery', '$175.00', '', ''],
  ['INST', 'Install, per section', '$98.00', '', ''],
] as const

const HEAD = ['Item #', 'Description', 'Retail price', 'Size', 'Weight (lb)']
export const PRICE_ROWS: readonly (readonly string[])[] = [HEAD, ...OTHERS, ...EXTRAS, ...SERVICES]

/** As a spreadsheet copies it. */
export const PRICE_LIST = PRICE_ROWS.map((row) => row.join('\t')).join('\n')
export const EXTRA_CODES = EXTRAS.map(([code]) => code)
