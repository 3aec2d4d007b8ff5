package meltkeeper.life;

/**
 * What is believed of a number: its mean and the values that it lies below with a probability of 5,
 * 50 and 95 %.
 */
public record Estimate(double mean, double p5, double p50, double p95) {}
