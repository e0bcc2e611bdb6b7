// Reads one corner's constants from a file of doubles, then answers requests on standard input, one a line:
//   sum      moves through all positions and prints the rows' checksum and the iterations used
//   time N   moves through all positions N times and prints the seconds taken
#include "cycle.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

double next(Numbers* numbers) { return *numbers->at++; }
int nextInt(Numbers* numbers) { return (int)next(numbers); }
Vec nextVec(Numbers* numbers) {
    const double x = next(numbers), y = next(numbers), z = next(numbers);
    return (Vec){x, y, z};
}

static double* readFile(const char* path) {
    FILE* file = fopen(path, "rb");
    if (!file) return NULL;
    fseek(file, 0, SEEK_END);
    const long bytes = ftell(file);
    rewind(file);
    double* numbers = malloc(bytes);
    const int whole = fread(numbers, 1, bytes, file) == (size_t)bytes;
    fclose(file);
    return whole ? numbers : NULL;
}

static int positions, width;
static const double* travels;
static Solve solve;
static Mechanism* mechanism;
static Outputs outputs;
static double state[STATE_SIZE], row[ROD_ENDS + 2 * MOST_ROD_ENDS];

static void toDesign(void) {
    memset(state, 0, sizeof state);
    state[ROTATION] = state[ROTATION + 4] = state[ROTATION + 8] = 1;
    state[FIRST_ARM] = state[SECOND_ARM] = state[QUATERNION] = 1;
}

// Every number of every position counts, each place with its own weight, as in checksum.ts.
static void printSum(void) {
    double sum = 0;
    int iterations = 0;
    toDesign();
    for (int i = 0; i < positions; ++i) {
        iterations += solve(mechanism, travels[i], state);
        writeRow(&outputs, state, row);
        for (int k = 0; k < width; ++k) sum += row[k] * (1 + (i * 7 + k * 3) % 11);
    }
    printf("%.17g %d\n", sum, iterations);
}

static void printTime(int cycles) {
    struct timespec start, end;
    clock_gettime(CLOCK_MONOTONIC, &start);
    for (int n = 0; n < cycles; ++n) {
        toDesign();
        for (int i = 0; i < positions; ++i) {
            solve(mechanism, travels[i], state);
            writeRow(&outputs, state, row);
        }
    }
    clock_gettime(CLOCK_MONOTONIC, &end);
    printf("%.9f\n", (double)(end.tv_sec - start.tv_sec) + 1e-9 * (double)(end.tv_nsec - start.tv_nsec));
}

int main(int count, char** words) {
    Numbers numbers = {count == 2 ? readFile(words[1]) : NULL};
    if (!numbers.at) {
        fprintf(stderr, "usage: cycle constants-file\n");
        return 1;
    }
    Mechanism* (*const read[])(Numbers*) = {readHArm, readDoubleAArm, readFiveLink};
    const Solve solvers[] = {solveHArm, solveDoubleAArm, solveFiveLink};
    const int kind = nextInt(&numbers);
    positions = nextInt(&numbers);
    width = nextInt(&numbers);
    travels = numbers.at;
    numbers.at += positions;
    mechanism = read[kind](&numbers);
    solve = solvers[kind];
    readOutputs(&outputs, &numbers);
    char line[64];
    while (fgets(line, sizeof line, stdin)) {
        int cycles;
        if (sscanf(line, "time %d", &cycles) == 1) printTime(cycles);
        else printSum();
        fflush(stdout);
    }
    return 0;
}
