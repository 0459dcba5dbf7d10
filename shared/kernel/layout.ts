/**
 * Where everything lies in the memory of one flow. Read by the kernel (AssemblyScript) and by the host (TypeScript) alike:
 * only plain constants, which both languages understand.
 *
 * A head of scalars, then arrays of one value a cell or face, STRIDE bytes apart, then the tables. A fixed stride lets the
 * kernel reach every array from one running pointer. It is an odd number of cache lines, so that cell i of all arrays does
 * not fall into the same few sets of the cache.
 */

/** Most cells that fit; longer flows take the TypeScript path. */
export const MAX_CELLS = 1024;
/** Most intervals of the gas table. */
export const MAX_INTERVALS = 1024;
export const STRIDE = 8256;

// Scalars of the head: byte offsets.
/** Result: largest (|u| + c)/Δx. */
export const SOUND_RATE = 0;
export const TEMPERATURE_MIN = 8;
export const TEMPERATURE_STEP = 16;
export const INTERVALS = 24;
export const GAS_AIR = 32;
/** Gas constants of fuel and products less that of air. */
export const GAS_FUEL = 40;
export const GAS_PRODUCT = 48;
/** Time step, s. */
export const STEP = 56;
/** Results: fastest signal, Σ p dA. */
export const FASTEST = 64;
export const PUSH = 72;
// Parameters of the sources.
export const EDDY_SIZE = 80;
export const AXIAL_MIXING = 88;
export const HALF_FRICTION = 96;
export const WALL_TURBULENCE = 104;
export const TURBULENCE_DECAY = 112;
export const IGNITION_MIXING = 120;
export const BURN_RATE = 128;
export const PRODUCT_SHARE = 136;
export const AIR_FUEL = 144;
export const HEATING_VALUE = 152;
export const QUENCHED = 160;
export const ONSET = 168;
export const PER_RANGE = 176;
// Results of the sources.
export const HEAT_RELEASED = 184;
export const WALL_HEAT = 192;
export const FRICTION_IMPULSE = 200;
export const WIDENING_IMPULSE = 208;
/** Largest D_t/Δx². */
export const MIXING_RATE = 216;
/** Not 0 once any cell has held fuel, products, turbulence or progress: until then their loops are left out. */
export const CARRIES = 224;

const ARRAYS = 256;
export const MASS = ARRAYS;
export const MOMENTUM = ARRAYS + STRIDE;
export const ENERGY = ARRAYS + 2 * STRIDE;
export const FUEL_MASS = ARRAYS + 3 * STRIDE;
export const PRODUCT_MASS = ARRAYS + 4 * STRIDE;
export const TURBULENCE = ARRAYS + 5 * STRIDE;
export const PROGRESS = ARRAYS + 6 * STRIDE;
export const DENSITY = ARRAYS + 7 * STRIDE;
export const VELOCITY = ARRAYS + 8 * STRIDE;
export const VOLUME_FLOW = ARRAYS + 9 * STRIDE;
export const PRESSURE = ARRAYS + 10 * STRIDE;
export const TEMPERATURE = ARRAYS + 11 * STRIDE;
export const SOUND_SPEED = ARRAYS + 12 * STRIDE;
export const INTERNAL_ENERGY = ARRAYS + 13 * STRIDE;
export const HEAT_CAPACITY = ARRAYS + 14 * STRIDE;
export const FUEL = ARRAYS + 15 * STRIDE;
export const PRODUCT = ARRAYS + 16 * STRIDE;
export const K = ARRAYS + 17 * STRIDE;
export const Z = ARRAYS + 18 * STRIDE;
export const FUEL_ENERGY = ARRAYS + 19 * STRIDE;
export const PRODUCT_ENERGY = ARRAYS + 20 * STRIDE;
export const MIXING = ARRAYS + 21 * STRIDE;
/** Fluxes follow one another in the order of the conserved variables, slopes and half-step states in that of the primitive ones. */
export const MASS_FLUX = ARRAYS + 22 * STRIDE;
export const MOMENTUM_FLUX = ARRAYS + 23 * STRIDE;
export const ENERGY_FLUX = ARRAYS + 24 * STRIDE;
export const FUEL_FLUX = ARRAYS + 25 * STRIDE;
export const PRODUCT_FLUX = ARRAYS + 26 * STRIDE;
export const TURBULENCE_FLUX = ARRAYS + 27 * STRIDE;
export const PROGRESS_FLUX = ARRAYS + 28 * STRIDE;
export const SLOPE_DENSITY = ARRAYS + 29 * STRIDE;
export const SLOPE_FLOW = ARRAYS + 30 * STRIDE;
export const SLOPE_PRESSURE = ARRAYS + 31 * STRIDE;
export const SLOPE_FUEL = ARRAYS + 32 * STRIDE;
export const SLOPE_PRODUCT = ARRAYS + 33 * STRIDE;
export const SLOPE_K = ARRAYS + 34 * STRIDE;
export const SLOPE_Z = ARRAYS + 35 * STRIDE;
export const HALF_DENSITY = ARRAYS + 36 * STRIDE;
export const HALF_FLOW = ARRAYS + 37 * STRIDE;
export const HALF_PRESSURE = ARRAYS + 38 * STRIDE;
export const HALF_FUEL = ARRAYS + 39 * STRIDE;
export const HALF_PRODUCT = ARRAYS + 40 * STRIDE;
export const HALF_K = ARRAYS + 41 * STRIDE;
export const HALF_Z = ARRAYS + 42 * STRIDE;
// The grid.
export const FACE_AREA = ARRAYS + 43 * STRIDE;
export const VOLUME = ARRAYS + 44 * STRIDE;
export const WALL_AREA = ARRAYS + 45 * STRIDE;
export const DIAMETER = ARRAYS + 46 * STRIDE;
export const LOSS_FORWARD = ARRAYS + 47 * STRIDE;
export const LOSS_BACKWARD = ARRAYS + 48 * STRIDE;
// The walls.
export const WALL_TEMPERATURE = ARRAYS + 49 * STRIDE;
export const FILM_TIME = ARRAYS + 50 * STRIDE;
export const FILM_HEAT = ARRAYS + 51 * STRIDE;
// What the kernel keeps for itself: 1/area, whether a face lies at a sudden step, area change and 1/volume of cells.
export const PER_AREA = ARRAYS + 52 * STRIDE;
export const SUDDEN = ARRAYS + 53 * STRIDE;
export const AREA_CHANGE = ARRAYS + 54 * STRIDE;
export const PER_VOLUME = ARRAYS + 55 * STRIDE;
export const ENTHALPY = ARRAYS + 56 * STRIDE;
export const SPECIFIC_VOLUME = ARRAYS + 57 * STRIDE;
// Kept too: mean area of a cell, 1/area, 1/eddy size.
export const MEAN_AREA = ARRAYS + 58 * STRIDE;
export const PER_MEAN_AREA = ARRAYS + 59 * STRIDE;
export const PER_EDDY = ARRAYS + 60 * STRIDE;
/** Widths of cells; 1/width, and 1/distance of the cells' middles at the face between them. */
export const WIDTH = ARRAYS + 61 * STRIDE;
export const PER_WIDTH = ARRAYS + 62 * STRIDE;
export const PER_DISTANCE = ARRAYS + 63 * STRIDE;
/** Knots of the chemical delay; then nine coefficients an interval of the gas table, fuel and products less air. */
export const DELAY = ARRAYS + 64 * STRIDE;
export const TABLE = ARRAYS + 65 * STRIDE;
export const MEMORY_BYTES = TABLE + MAX_INTERVALS * 72;
