/** Every abbreviation and symbol of the report, spelled out once. */
export const ABBREVIATIONS: { term: string; meaning: string }[] = [
  { term: 'TSFC', meaning: 'thrust-specific fuel consumption: fuel used each hour for each unit of thrust' },
  { term: 'C1, C2, …', meaning: 'candidates in the order of their rank' },
  { term: '5–95 %', meaning: 'band that holds nine tenths of the draws; the figure before it is the middle one' },
  { term: 'equivalence ratio', meaning: 'fuel used over the fuel that the air taken in could burn; 1 is just enough' },
  { term: 'non-dominated', meaning: 'no other finalist is better in both TSFC and valve life' },
  { term: 'hypervolume', meaning: 'how much of the picture of TSFC and life the best designs cover; more is better' },
  { term: 'gauge, absolute', meaning: 'pressure above outside air; pressure above vacuum' },
  {
    term: 'draw',
    meaning: 'one repetition of the calculation with constants and dimensions varied within their errors',
  },
  { term: 'binding', meaning: 'a failed check that makes the design unacceptable' },
  { term: 'SVG, DXF, PDF, CSV, JSON', meaning: 'file formats for drawings, pages, tables and data' },
  { term: 'dB(A)', meaning: 'sound pressure level, weighted as the ear hears' },
  {
    term: 'NIOSH, OSHA, NACA, NASA, AIAA, ISO',
    meaning: 'bodies whose published limits, reports and standards are cited',
  },
];
