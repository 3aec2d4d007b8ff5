/** Listens to MQTT brokers, at protocol levels 5 and 3.1.1. */
@NullMarked
package meltkeeper.source.mqtt;

import org.jspecify.annotations.NullMarked;
