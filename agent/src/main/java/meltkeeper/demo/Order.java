package meltkeeper.demo;

import java.time.Duration;

/**
 * Goods to be printed in one batch.
 *
 * @param celsius the hot end's target
 * @param fan speed of the part fan, 0 to 1
 * @param feeding how long filament is fed, whole multiples of 10 s
 */
public record Order(String goods, Plastic plastic, double celsius, double fan, Duration feeding) {}
