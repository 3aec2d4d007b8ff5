@org.jspecify.annotations.NullMarked
package meltkeeper.protocol.motion;
