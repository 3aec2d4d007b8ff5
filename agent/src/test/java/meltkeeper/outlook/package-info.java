@org.jspecify.annotations.NullMarked
package meltkeeper.outlook;
