/**
 * Crowding distance (Deb, Pratap, Agarwal and Meyarivan, IEEE Transactions on Evolutionary Computation 6, 2002): for each
 * point of a front the sum over objectives of the gap between its neighbours, over the front's extent. Ends get Infinity.
 */
export function crowdingDistance(points: readonly ArrayLike<number>[]): Float64Array {
  const count = points.length;
  const distance = new Float64Array(count);
  if (count === 0) return distance;
  const order = points.map((_, i) => i);
  for (let k = 0; k < points[0].length; k++) {
    order.sort((i, j) => points[i][k] - points[j][k] || i - j);
    const extent = points[order[count - 1]][k] - points[order[0]][k];
    distance[order[0]] = Infinity;
    distance[order[count - 1]] = Infinity;
    if (!(extent > 0)) continue;
    for (let n = 1; n < count - 1; n++) {
      distance[order[n]] += (points[order[n + 1]][k] - points[order[n - 1]][k]) / extent;
    }
  }
  return distance;
}
