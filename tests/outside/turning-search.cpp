// The same turning scenes by a general-purpose motion planning library (OMPL), for times in one run. Read from standard
// input: a scene, then one search a line; one line is answered for each. Built and driven by turning-search.ts.

#include <ompl/base/SpaceInformation.h>
#include <ompl/base/spaces/ReedsSheppStateSpace.h>
#include <ompl/geometric/PathSimplifier.h>
#include <ompl/geometric/SimpleSetup.h>
#include <ompl/geometric/planners/kpiece/BKPIECE1.h>
#include <ompl/geometric/planners/kpiece/KPIECE1.h>
#include <ompl/geometric/planners/rrt/RRTConnect.h>
#include <ompl/util/Console.h>
#include <ompl/util/RandomNumbers.h>

#include <cmath>
#include <ctime>
#include <iostream>
#include <memory>
#include <string>
#include <vector>

namespace ob = ompl::base;
namespace og = ompl::geometric;

struct Edge { double ax, ay, bx, by; bool obstacle; };
struct Ground { std::vector<Edge> edges; };
struct Box { double back, front, right, left; const Ground *ground; };
struct Scene {
  Ground clear, running;
  std::vector<Box> boxes;
  double radius, lowX, highX, lowY, highY, start[3], goal[3];
};

static bool inside(const Ground &ground, double x, double y) {
  bool in = false, blocked = false;
  for (const Edge &e : ground.edges) {
    if ((e.ay > y) == (e.by > y)) continue;
    if (x < e.ax + (y - e.ay) / (e.by - e.ay) * (e.bx - e.ax)) (e.obstacle ? blocked : in) ^= true;
  }
  return in && !blocked;
}

static bool clip(double start, double step, double low, double high, double &from, double &to) {
  if (step == 0) return start > low && start < high;
  const double a = (low - start) / step, b = (high - start) / step;
  from = std::max(from, std::min(a, b));
  to = std::min(to, std::max(a, b));
  return from < to;
}

static bool standsFree(const Scene &scene, double x, double y, double heading) {
  const double c = std::cos(heading), s = std::sin(heading);
  for (const Box &box : scene.boxes) {
    const double u = (box.back + box.front) / 2, v = (box.right + box.left) / 2;
    if (!inside(*box.ground, x + c * u - s * v, y + s * u + c * v)) return false;
    for (const Edge &e : box.ground->edges) {
      const double ax = e.ax - x, ay = e.ay - y, bx = e.bx - x, by = e.by - y;
      const double px = c * ax + s * ay, py = c * ay - s * ax;
      double from = 0, to = 1;
      if (clip(px, c * bx + s * by - px, box.back, box.front, from, to) &&
          clip(py, c * by - s * bx - py, box.right, box.left, from, to))
        return false;
    }
  }
  return true;
}

static void readGround(Ground &ground) {
  int rings;
  std::cin >> rings;
  for (int i = 0; i < rings; i++) {
    int count, obstacle;
    std::cin >> obstacle >> count;
    std::vector<double> x(count), y(count);
    for (int k = 0; k < count; k++) std::cin >> x[k] >> y[k];
    for (int k = 0; k < count; k++) {
      const int n = (k + 1) % count;
      ground.edges.push_back({x[k], y[k], x[n], y[n], obstacle == 1});
    }
  }
}

static std::unique_ptr<Scene> readScene() {
  auto scene = std::make_unique<Scene>();
  std::cin >> scene->radius >> scene->lowX >> scene->highX >> scene->lowY >> scene->highY;
  for (double &value : scene->start) std::cin >> value;
  for (double &value : scene->goal) std::cin >> value;
  readGround(scene->clear);
  readGround(scene->running);
  int count;
  std::cin >> count;
  for (int i = 0; i < count; i++) {
    Box box{};
    int onRunning;
    std::cin >> onRunning >> box.back >> box.front >> box.right >> box.left;
    box.ground = onRunning == 1 ? &scene->running : &scene->clear;
    scene->boxes.push_back(box);
  }
  return scene;
}

static int changesOf(const og::PathGeometric &path, const ob::ReedsSheppStateSpace &space) {
  int changes = 0, gear = 0;
  for (std::size_t i = 0; i + 1 < path.getStateCount(); i++) {
    const auto leg = space.reedsShepp(path.getState(i), path.getState(i + 1));
    for (const double length : leg.length_) {
      if (std::fabs(length) < 1e-6) continue;
      const int now = length > 0 ? 1 : -1;
      if (gear != 0 && now != gear) changes++;
      gear = now;
    }
  }
  return changes;
}

static ob::PlannerPtr plannerOf(const std::string &name, double range, const ob::SpaceInformationPtr &si) {
  if (name == "RRTConnect") {
    auto planner = std::make_shared<og::RRTConnect>(si);
    if (range > 0) planner->setRange(range);
    return planner;
  }
  if (name == "KPIECE") {
    auto planner = std::make_shared<og::KPIECE1>(si);
    if (range > 0) planner->setRange(range);
    return planner;
  }
  auto planner = std::make_shared<og::BKPIECE1>(si);
  if (range > 0) planner->setRange(range);
  return planner;
}

static double seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

static void search(const Scene &scene) {
  std::string name;
  double range, limit;
  int cut;
  std::cin >> name >> range >> limit >> cut;
  auto space = std::make_shared<ob::ReedsSheppStateSpace>(scene.radius);
  ob::RealVectorBounds bounds(2);
  bounds.setLow(0, scene.lowX);
  bounds.setHigh(0, scene.highX);
  bounds.setLow(1, scene.lowY);
  bounds.setHigh(1, scene.highY);
  space->setBounds(bounds);
  og::SimpleSetup setup(space);
  auto si = setup.getSpaceInformation();
  si->setStateValidityChecker([&scene](const ob::State *state) {
    const auto *at = state->as<ob::SE2StateSpace::StateType>();
    return standsFree(scene, at->getX(), at->getY(), at->getYaw());
  });
  si->setMotionValidator(std::make_shared<ob::ReedsSheppMotionValidator>(si));
  ob::ScopedState<ob::SE2StateSpace> start(space), goal(space);
  start->setXY(scene.start[0], scene.start[1]);
  start->setYaw(scene.start[2]);
  space->enforceBounds(start.get());
  goal->setXY(scene.goal[0], scene.goal[1]);
  goal->setYaw(scene.goal[2]);
  space->enforceBounds(goal.get());
  setup.setStartAndGoalStates(start, goal);
  // Checked every 5 cm: the setting is a share of the extent of the space.
  si->setStateValidityCheckingResolution(0.05 / space->getMaximumExtent());
  setup.setPlanner(plannerOf(name, range, si));
  const double from = seconds();
  setup.setup();
  const auto status = setup.solve(limit);
  const double first = seconds() - from;
  if (status != ob::PlannerStatus::EXACT_SOLUTION) {
    std::cout << "none " << first * 1000 << std::endl;
    return;
  }
  auto path = setup.getSolutionPath();
  const int raw = changesOf(path, *space);
  if (cut == 1) {
    og::PathSimplifier shorter(si);
    shorter.reduceVertices(path);
    shorter.shortcutPath(path);
    shorter.reduceVertices(path);
  }
  std::cout << "found " << first * 1000 << " " << raw << " " << changesOf(path, *space) << " "
            << (seconds() - from) * 1000 << std::endl;
}

int main() {
  ompl::msg::noOutputHandler();
  ompl::RNG::setSeed(20261125);
  std::unique_ptr<Scene> scene;
  std::string word;
  while (std::cin >> word) {
    if (word == "scene") scene = readScene();
    else if (word == "search" && scene) search(*scene);
  }
  return 0;
}
