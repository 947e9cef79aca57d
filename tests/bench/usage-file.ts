/** The variable that names the file to which each process of a measured command adds a line, {@link process.resourceUsage}. */
export const usageFile = 'GATELIGHT_BENCH_USAGE';
